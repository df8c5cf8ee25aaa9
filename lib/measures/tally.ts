import type { Period } from "@/lib/records/period";

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

/** Like with like: how a canal was prepared and how irrigant was brought in; null where it is not known. */
export type Stratum = { readonly preparation: string | null; readonly delivery: string | null };

/** Units left out, by the first reason that applies. */
export type ByReason = Readonly<Record<string, number>>;

type Counted = {
  readonly measure: string;
  readonly subject: Subject;
  readonly period: Period;
  /** Every unit before anything is left out. */
  readonly population: number;
  readonly excluded: ByReason;
  readonly excepted: ByReason;
  readonly notRecorded: number;
  /** Only these units, where strata were asked for. */
  readonly stratum?: Stratum;
};

/** Counts and order statistics of a continuous measure; null where there is nothing to order. */
export type MedianTally = Counted & {
  readonly kind: "median";
  readonly n: number;
  readonly median: number | null;
  readonly quartiles: readonly [number, number] | null;
  /** The values at the ranks that bound the median's interval. */
  readonly bounds: readonly [number, number] | null;
};

/** Counts of a proportion: `met` of `of`. */
export type RateTally = Counted & {
  readonly kind: "rate";
  readonly numerator: number;
  readonly denominator: number;
  /** Units with evidence that the criterion was not met; of a separation, units without one. */
  readonly notMet: number;
};

export type Tally = MedianTally | RateTally;

/** The 1-based ranks of the order statistics that bound a median's interval for n values. */
export type MedianRanks = (
  n: number,
) => { readonly lower: number; readonly upper: number } | undefined;
