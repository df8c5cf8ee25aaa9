import type { Measured } from "@/lib/measures/measured";
import type { ByReason, Stratum, Subject } from "@/lib/measures/tally";

/** An interval of confidence around an estimate. */
export type FigureInterval = {
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly method: string;
};

/** An interval that allows for units of one patient resembling each other, and how much that makes of it. */
export type ClusteredInterval = FigureInterval & {
  /** How many times the variance is that of independent units; null with none or all of them events. */
  readonly designEffect: number | null;
  /** The number of independent units that would tell as much; never over the units there are. */
  readonly effectiveUnits: number | null;
  /** Patients. */
  readonly clusters: number;
  /** How many times as wide as the plain interval (of a rate, Wilson's); null where that has no width. */
  readonly timesPlain: number | null;
};

/** What a figure is compared with, and which of the possible comparisons it is. */
export type Reference = {
  /** In words: the practice's median without this clinician, or one of its fall-backs. */
  readonly what: string;
  readonly estimate: number | null;
  readonly interval: FigureInterval | null;
  readonly clustered: ClusteredInterval | null;
  readonly n: number;
};

type Shared = Measured & {
  readonly about: Subject;
  /** The period's name, as 2026-Q3. */
  readonly period: string;
  /** UCUM unit of a continuous measure; what is counted for a proportion. */
  readonly unit: string;
  readonly population: number;
  readonly excluded: ByReason;
  readonly excepted: ByReason;
  readonly notRecorded: number;
  /** Only these units, where figures were asked for by stratum. */
  readonly stratum?: Stratum;
  /** Null where there is nothing to estimate; then `why` says so. Never 0 for missing. */
  readonly estimate: number | null;
  readonly interval: FigureInterval | null;
  /** Null where units sit in no patient, or too few patients are there. */
  readonly clustered: ClusteredInterval | null;
  readonly reference?: Reference;
  readonly masked?: true;
  readonly why?: string;
};

export type MedianFigure = Shared & {
  readonly kind: "median";
  readonly n: number;
  readonly quartiles: readonly [number, number] | null;
};

export type RateFigure = Shared & {
  readonly kind: "rate";
  readonly numerator: number;
  readonly denominator: number;
  /** Criteria: units with evidence that it was not met. */
  readonly notMet: number;
  /** Criteria: the rate were every unrecorded unit not met, and were it met. */
  readonly bounds?: readonly [number, number];
  /** Absent also where what is counted together has different targets. */
  readonly target?: number;
  /** Days of the period on which another version of the criterion began. */
  readonly changedOn?: readonly string[];
  /** In these records, and beyond chance: two verdicts, never mixed. */
  readonly inTheseRecords?: "reached" | "not reached" | "not assessable";
  readonly beyondChance?: "reached" | "missed" | "not settled by this many" | "not assessable";
};

/** One result, the same on a page, in an export and in the command's JSON. */
export type Figure = MedianFigure | RateFigure;
