import type { Ends } from "@/lib/statistics/interval";
import { wilson } from "@/lib/statistics/proportion-interval";
import { type EstimateWithEnds, squareAndAdd } from "@/lib/statistics/square-and-add";
import type { Figure, FigureInterval } from "./figure";
import { level } from "./level";

/** What a difference is taken of: a figure, or what a figure is compared with. */
export type Compared =
  | Pick<Extract<Figure, { kind: "median" }>, "kind" | "estimate" | "clustered">
  | Pick<
      Extract<Figure, { kind: "rate" }>,
      "kind" | "estimate" | "clustered" | "numerator" | "denominator"
    >;

/** first − second, in the unit of the estimates; settled where the interval leaves 0 out. */
export type Difference = FigureInterval & {
  readonly estimate: number;
  readonly settled: boolean;
};

/**
 * The difference of two independent estimates with its interval: of rates Newcombe's method 10 (1998, Stat Med 17:873),
 * with the limits that allow for units of one patient where they exist; of medians the same of Woodruff's ends (Zou &
 * Donner 2008, Stat Med 27:1693). Undefined where either has no estimate or no ends.
 */
export function differenceOf(first: Compared, second: Compared): Difference | undefined {
  const [one, other] = [withEnds(first), withEnds(second)];
  if (!one || !other) return undefined;
  const ends = squareAndAdd(one, other);
  return {
    estimate: one.estimate - other.estimate,
    ...ends,
    level,
    method: first.kind === "rate" ? "newcombe" : "median-difference",
    settled: ends.lower > 0 || ends.upper < 0,
  };
}

function withEnds(of: Compared): EstimateWithEnds | undefined {
  const ends = of.clustered ?? plainEnds(of);
  if (of.estimate === null || !ends) return undefined;
  return { estimate: of.estimate, lower: ends.lower, upper: ends.upper };
}

// Newcombe's method is defined with Wilson's limits, whatever interval stands beside the rate itself.
function plainEnds(of: Compared): Ends | undefined {
  return of.kind === "rate" ? wilson(of.numerator, of.denominator, level) : undefined;
}
