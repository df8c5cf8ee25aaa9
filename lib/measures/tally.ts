import type { Period } from "@/lib/records/period";
import type { Measured } from "./measured";

/** Who or what a figure is about. A clinician is (practice, code); a person known at two practices has one key. */
export type Subject =
  | { readonly kind: "group" }
  | { readonly kind: "practice"; readonly code: string }
  | {
      readonly kind: "clinician";
      readonly code: string;
      readonly practice?: string;
      readonly key: string;
    }
  | { readonly kind: "chair"; readonly code: string; readonly practice: string };

export type SubjectKind = Subject["kind"];

/** What canals are told apart by: how they were treated, or what there was to treat. */
export type StratumKind = "technique" | "case";

/**
 * Like with like. By technique: how the canal was prepared and how irrigant was brought in. By case: the group of
 * teeth, the class of curvature, and primary or retreatment. Null where it is not known.
 */
export type Stratum =
  | {
      readonly by: "technique";
      readonly preparation: string | null;
      readonly delivery: string | null;
    }
  | {
      readonly by: "case";
      readonly tooth: string | null;
      readonly curvature: string | null;
      readonly treatment: string | null;
    };

/**
 * What the variance between clusters needs of them: how many have a unit, and the sums over them of events, units,
 * squares and products. A cluster is a patient with the subject's units of the period.
 */
export type ClusterCounts = {
  readonly clusters: number;
  readonly events: number;
  readonly units: number;
  readonly eventsSquared: number;
  readonly eventsByUnits: number;
  readonly unitsSquared: number;
};

/** The ends of a median's interval that honours the patient (Woodruff 1952), and what clustering makes of the variance. */
export type ClusteredMedian = {
  readonly lower: number;
  readonly upper: number;
  readonly designEffect: number;
  readonly clusters: number;
};

/** Units left out, by the first reason that applies. */
export type ByReason = Readonly<Record<string, number>>;

type Counted = Measured & {
  readonly subject: Subject;
  readonly period: Period;
  /** Every unit before anything is left out. */
  readonly population: number;
  readonly excluded: ByReason;
  readonly excepted: ByReason;
  readonly notRecorded: number;
  /** Only these units, where strata were asked for. */
  readonly stratum?: Stratum;
  /** Of a criterion: days of the period on which another version of it began. */
  readonly changedOn?: readonly string[];
  /** Of a criterion: the practices or versions counted together have different targets. */
  readonly targetsDiffer?: boolean;
};

/** Counts and order statistics of a continuous measure; null where there is nothing to order. */
export type MedianTally = Counted & {
  readonly kind: "median";
  readonly n: number;
  readonly median: number | null;
  readonly quartiles: readonly [number, number] | null;
  /** The values at the ranks that bound the median's interval. */
  readonly bounds: readonly [number, number] | null;
  /** Null where there are too few patients, or the interval would leave the values. */
  readonly clustered: ClusteredMedian | null;
};

/** Counts of a proportion: `met` of `of`. */
export type RateTally = Counted & {
  readonly kind: "rate";
  readonly numerator: number;
  readonly denominator: number;
  /** Units with evidence that the criterion was not met; of a separation, units without one. */
  readonly notMet: number;
  /** Null for units that sit in no patient. */
  readonly clusters: ClusterCounts | null;
};

export type Tally = MedianTally | RateTally;

/** What the ends of a median's intervals need before the values are ordered. */
export type MedianEnds = {
  /** The 1-based ranks of the order statistics that bound a median's interval for n values. */
  readonly ranks: (n: number) => { readonly lower: number; readonly upper: number } | undefined;
  /** How many standard errors an interval reaches on each side with so many clusters; undefined with fewer than two. */
  readonly reach: (clusters: number) => number | undefined;
};
