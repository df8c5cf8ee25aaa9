import { smallestDetectable } from "@/lib/statistics/detectable";
import { benjaminiHochberg } from "@/lib/statistics/false-discovery";
import { flags } from "@/lib/statistics/flags";
import { funnelLimits, overdispersion, tailProbability } from "@/lib/statistics/funnel";
import { betaBinomialFit, reliability, shrunkenRate } from "@/lib/statistics/shrinkage";
import { expectedFrom, standardisedRatio } from "@/lib/statistics/standardised-ratio";
import { eachOf, ends, type Family, family } from "./family";

type Tail = { x: number; n: number; theta: number; upper: number; lower: number; p: number };
type Several = { events: number[]; units: number[] };
type Flagged = Several & {
  theta: number;
  deff: number;
  m: number;
  p: (number | null)[];
  adjusted: (number | null)[];
  tier: (number | null)[];
};
type Spread = Several & { theta: number; z: number[]; phi: number; tau2: number };
type Fit = Several & {
  mu: number;
  theta: number;
  logLikelihood: number;
  shrunken: number;
  reliability: number;
};
type Ratio = {
  observed: number;
  expected: number;
  level: number;
  ratio: number;
  lower: number;
  upper: number;
};
type Strata = {
  units: number[];
  referenceEvents: number[];
  referenceUnits: number[];
  expected: number;
  usedUnits: number;
  leftStrata: number;
  leftUnits: number;
};

/** Several clinicians beside each other. */
export const comparisons: Family[] = [
  family("false-discovery", (c: { p: number[]; adjusted: number[] }) =>
    eachOf(benjaminiHochberg(c.p), c.adjusted),
  ),
  family("tail-probability", (c: Tail) => {
    const found = tailProbability(c.x, c.n, c.theta);
    return [...ends(found, c), [found.p, c.p]];
  }),
  family("funnel-limits", (c: { theta: number; n: number; tail: number; limit: number }) => [
    [funnelLimits(c.theta, c.n, c.tail), c.limit],
  ]),
  family("overdispersion", (c: Spread) => {
    const found = overdispersion(paired(c));
    return [
      [found?.theta, c.theta],
      [found?.phi, c.phi],
      [found?.tau2, c.tau2],
      ...eachOf(found?.z ?? [], c.z),
    ];
  }),
  family(
    "detectable",
    (c: { n: number; theta: number; tail: number; power: number; detectable: number | null }) => [
      [smallestDetectable(c.n, c.theta, c.tail, c.power), c.detectable],
    ],
  ),
  family("flags", (c: Flagged) => {
    const figures = paired(c).map((one) => ({ ...one, theta: c.theta, designEffect: c.deff }));
    const found = flags(figures);
    const tiers = found.figures.map(
      (flag) => flag && [null, "look", "look-first"].indexOf(flag.tier),
    );
    return [
      [found.m, c.m],
      ...eachOf(
        found.figures.map((flag) => flag?.p),
        c.p,
      ),
      ...eachOf(
        found.figures.map((flag) => flag?.adjusted),
        c.adjusted,
      ),
      ...eachOf(tiers, c.tier),
    ];
  }),
  family("standardised-ratio", (c: Ratio) => {
    const found = standardisedRatio(c.observed, c.expected, c.level);
    return [[found?.ratio, c.ratio], ...ends(found?.interval, c)];
  }),
  family("expected", (c: Strata) => {
    const found = expectedFrom(
      c.units.map((units, place) => ({
        units,
        referenceEvents: c.referenceEvents[place] as number,
        referenceUnits: c.referenceUnits[place] as number,
      })),
    );
    const used = c.units.filter((_, place) => found.used[place]).reduce((all, one) => all + one, 0);
    return [
      [found.expected, c.expected],
      [used, c.usedUnits],
      [found.leftOut.strata, c.leftStrata],
      [found.leftOut.units, c.leftUnits],
    ];
  }),
  family("shrinkage", (c: Fit) => {
    const units = paired(c);
    const found = betaBinomialFit(units);
    const [first] = units;
    if (found === undefined || first === undefined) return [[undefined, c.mu]];
    return [
      [found.mu, c.mu],
      [found.theta, c.theta],
      [found.logLikelihood, c.logLikelihood],
      [shrunkenRate(first.events, first.units, found), c.shrunken],
      [reliability(first.units, found), c.reliability],
    ];
  }),
];

function paired({ events, units }: Several): { events: number; units: number }[] {
  return events.map((one, place) => ({ events: one, units: units[place] as number }));
}
