import { bernoulliCusum } from "@/lib/statistics/bernoulli-cusum";
import * as charts from "@/lib/statistics/control-chart";
import { runSignals } from "@/lib/statistics/run-chart";
import { eachOf, ends, type Family, family, type Pair } from "./family";

type Absent = number | null;
type Limits = { centre: number; lower: Absent[]; upper: Absent[] };
type Line = { centre: number; lower: number; upper: number };
type Counted = Limits & { events: number[]; units: number[] };
type Run = {
  values: Absent[];
  centre: number;
  useful: number;
  longestRun: number;
  crossings: number;
  longestLimit: Absent;
  crossingsLimit: Absent;
};
type Cusum = {
  outcomes: (0 | 1)[];
  baseline: number | number[];
  oddsRatio: number;
  limit: number;
  path: number[];
  signals: number[];
};
type Months = Line & { value: Absent[]; n: number[]; drawn: boolean; movingRange: number };

/** Charts over time. */
export const overTime: Family[] = [
  family("run-chart", (c: Run) => {
    const found = runSignals(c.values, c.centre);
    return [
      [found.useful, c.useful],
      [found.longestRun, c.longestRun],
      [found.crossings, c.crossings],
      [found.longestRunLimit, c.longestLimit],
      [found.crossingsLimit, c.crossingsLimit],
    ];
  }),
  family("bernoulli-cusum", (c: Cusum) => {
    const found = bernoulliCusum(c.outcomes, c.baseline, c.oddsRatio, c.limit);
    return [...eachOf(found.path, c.path), ...eachOf(found.signals, c.signals)];
  }),
  family("p-chart", (c: Counted) => limits(charts.pChart(periods(c)), c)),
  family("p-prime-chart", (c: Counted & { sigmaZ: number; prime: boolean }) => {
    const found = charts.pPrimeChart(periods(c));
    const prime = charts.chooseP(periods(c)) === "p-prime";
    return [...limits(found, c), [found?.sigmaZ, c.sigmaZ], [Number(prime), Number(c.prime)]];
  }),
  family("u-chart", (c: Limits & { events: number[]; exposure: number[] }) =>
    limits(
      charts.uChart(
        c.events.map((events, place) => ({ events, exposure: c.exposure[place] as number })),
      ),
      c,
    ),
  ),
  family("g-chart", (c: Line & { gaps: number[]; open: number; probability: number }) => {
    const found = charts.gChart(c.gaps, c.open);
    return [...line(found, c), [found?.probability, c.probability]];
  }),
  family("t-chart", (c: Line & { days: number[] }) => line(charts.tChart(c.days), c)),
  family("xmr-chart", (c: Months) => {
    const found = charts.xmrChart(
      c.value.map((value, place) => (value === null ? null : { value, n: c.n[place] as number })),
    );
    if (!found.drawn) return [[0, Number(c.drawn)]];
    return [[1, Number(c.drawn)], ...line(found, c), [found.movingRange, c.movingRange]];
  }),
];

function periods(c: Counted): { events: number; units: number }[] {
  return c.events.map((events, place) => ({ events, units: c.units[place] as number }));
}

function limits(found: charts.ControlChart | undefined, c: Limits): Pair[] {
  const points = found?.points ?? [];
  return [
    [found?.centre, c.centre],
    ...eachOf(
      points.map((point) => point?.lower),
      c.lower,
    ),
    ...eachOf(
      points.map((point) => point?.upper),
      c.upper,
    ),
  ];
}

/** For charts whose limits are the same at every point. */
function line(found: charts.ControlChart | undefined, c: Line): Pair[] {
  const points = (found?.points ?? []).filter((point) => point !== null);
  return [
    [Math.min(points.length, 1), 1],
    [found?.centre, c.centre],
    ...points.flatMap((point) => ends(point, c)),
  ];
}
