import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";
import { miettinenNurminen, newcombe } from "@/lib/statistics/proportion-difference";
import { clopperPearson, jeffreys, midP, wilson } from "@/lib/statistics/proportion-interval";
import { quantile } from "@/lib/statistics/quantile";
import { poissonExact, poissonMidP } from "@/lib/statistics/rate-interval";
import { ends, type Family, family } from "./family";

type Counts = { x: number; n: number; level: number; lower: number; upper: number };
type Rate = { events: number; exposure: number; level: number; lower: number; upper: number };
type Two = {
  x1: number;
  n1: number;
  x2: number;
  n2: number;
  level: number;
  lower: number;
  upper: number;
};
type Ranks = {
  n: number;
  level: number;
  lower: number | null;
  upper: number | null;
  coverage: number | null;
};

/** Intervals for one proportion, one rate, two proportions, and order statistics. */
export const intervals: Family[] = [
  ...(["", "-statsmodels"] as const).flatMap((by) => [
    family(`wilson${by}`, (c: Counts) => ends(wilson(c.x, c.n, c.level), c)),
    family(`clopper-pearson${by}`, (c: Counts) => ends(clopperPearson(c.x, c.n, c.level), c)),
    family(`jeffreys${by}`, (c: Counts) => ends(jeffreys(c.x, c.n, c.level), c)),
  ]),
  family("mid-p", (c: Counts) => ends(midP(c.x, c.n, c.level), c)),
  family("poisson-exact", (c: Rate) => ends(poissonExact(c.events, c.exposure, c.level), c)),
  family("poisson-mid-p", (c: Rate) => ends(poissonMidP(c.events, c.exposure, c.level), c)),
  family("newcombe", (c: Two) => ends(newcombe(c.x1, c.n1, c.x2, c.n2, c.level), c)),
  family("miettinen-nurminen", (c: Two) =>
    ends(miettinenNurminen(c.x1, c.n1, c.x2, c.n2, c.level), c),
  ),
  family("quantile", (c: { values: number[]; p: number; quantile: number }) => [
    [quantile(c.values, c.p), c.quantile],
  ]),
  family("median-ranks", (c: Ranks) => {
    const found = medianIntervalRanks(c.n, c.level);
    return [...ends(found, c), [found?.coverage, c.coverage]];
  }),
];
