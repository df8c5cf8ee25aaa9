import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { clusteredProportion } from "@/lib/statistics/clustered-proportion";
import { medianDifference } from "@/lib/statistics/median-difference";
import { ends, type Family, family } from "./family";

type Absent = number | null;
type Proportion = {
  events: number[];
  units: number[];
  level: number;
  estimate: number;
  se: Absent;
  deff: Absent;
  effective: Absent;
  lower: Absent;
  upper: Absent;
};
type Median = { clusters: number[][]; level: number; lower: Absent; upper: Absent; deff: Absent };
type Difference = {
  first: number[][];
  second: number[][];
  level: number;
  estimate: number;
  lower: Absent;
  upper: Absent;
};

/** What honours that units sit in clusters. */
export const clusters: Family[] = [
  family("clustered-proportion", (c: Proportion) => {
    const counted = c.events.map((events, place) => ({ events, units: c.units[place] as number }));
    const found = clusteredProportion(counted, c.level);
    return [
      [found?.estimate, c.estimate],
      [found?.standardError, c.se],
      [found?.designEffect, c.deff],
      [found?.effectiveN, c.effective],
      ...ends(found?.interval, c),
    ];
  }),
  family("clustered-median", (c: Median) => {
    const found = clusteredMedianInterval(c.clusters, c.level);
    return [...ends(found, c), [found?.designEffect, c.deff]];
  }),
  family("median-difference", (c: Difference) => {
    const found = medianDifference(c.first, c.second, c.level);
    return [[found?.estimate, c.estimate], ...ends(found?.interval, c)];
  }),
];
