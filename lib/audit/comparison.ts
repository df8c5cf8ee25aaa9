import type { ClusterCounts, ClusteredMedian } from "@/lib/measures/tally";
import { criterionId } from "@/lib/protocol/criterion";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";
import { clopperPearson, wilson } from "@/lib/statistics/proportion-interval";
import { clusteredMedian, clusteredRate } from "./clustered";
import type { Figure, FigureInterval, Reference } from "./figure";
import { level } from "./level";

/**
 * Which of the possible comparisons it is: the practice's others, the group's others of the same peer group, the
 * clinician's own four quarters before, or none.
 */
export type ComparisonKind = "practice" | "peers" | "own" | "none";

/** What a clinician's figure is compared with; `why` says why there is none. */
export type Comparison = Reference & {
  readonly kind: ComparisonKind;
  /** Of a rate, how many of the n; null of a median. */
  readonly numerator: number | null;
  readonly quartiles: readonly [number, number] | null;
  readonly why?: string;
};

/** Counts and order statistics of the others' units. */
export type OthersCounts = {
  readonly measure: string;
  readonly n: number;
  readonly numerator: number | null;
  readonly clusters: ClusterCounts | null;
  readonly median: number | null;
  readonly quartiles: readonly [number, number] | null;
  readonly bounds: readonly [number, number] | null;
  readonly clustered: ClusteredMedian | null;
};

/** The comparison with other clinicians: their median, or their pooled rate, with the interval of its kind of figure. */
export function comparisonWithOthers(
  kind: "practice" | "peers",
  what: string,
  others: OthersCounts,
): Comparison {
  const { measure, n, numerator, clusters, median, quartiles, bounds } = others;
  if (numerator === null) {
    const interval: FigureInterval | null =
      bounds && medianIntervalRanks(n, level)
        ? { lower: bounds[0], upper: bounds[1], level, method: "median-order-statistics" }
        : null;
    const clustered = clusteredMedian(others, interval);
    return { kind, what, estimate: median, interval, clustered, n, numerator, quartiles };
  }
  return {
    kind,
    what,
    estimate: numerator / n,
    interval: rateInterval(measure, numerator, n),
    clustered: clusteredRate({ clusters, numerator, denominator: n }),
    n,
    numerator,
    quartiles: null,
  };
}

/** The comparison with the clinician's own earlier figure; undefined where that has no estimate. */
export function comparisonWithOwn(before: Figure | undefined): Comparison | undefined {
  if (!before || before.estimate === null) return undefined;
  const median = before.kind === "median";
  return {
    kind: "own",
    what: "the clinician's own four quarters before",
    estimate: before.estimate,
    interval: before.interval,
    clustered: before.clustered,
    n: median ? before.n : before.denominator,
    numerator: median ? null : before.numerator,
    quartiles: median ? before.quartiles : null,
  };
}

/** There is nothing to compare with, and why. */
export function noComparison(why: string): Comparison {
  return {
    kind: "none",
    what: "no comparison",
    estimate: null,
    interval: null,
    clustered: null,
    n: 0,
    numerator: null,
    quartiles: null,
    why,
  };
}

function rateInterval(measure: string, events: number, n: number): FigureInterval | null {
  return (criterionId(measure) ? wilson : clopperPearson)(events, n, level) ?? null;
}
