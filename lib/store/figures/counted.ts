import type { MedianRanks, SubjectKind } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";

export type Asked = {
  /** Ids of measures, or criterion/<id>. */
  readonly measures: readonly string[];
  readonly periods: readonly Period[];
  readonly by: readonly SubjectKind[];
  readonly ranks: MedianRanks;
  /** Counts without the order statistics of continuous measures. */
  readonly countsAlone?: boolean;
  /** Continuous measures of canals apart by preparation and delivery. */
  readonly strata?: boolean;
};

/** One row of counts: a measure, a period, a subject, and why units are left out. */
export type CountRow = {
  measure: string;
  period: number;
  kind: SubjectKind;
  key: string;
  practice: string | null;
  code: string | null;
  excluded: string | null;
  excepted: string | null;
  units: number;
  numerator: number | null;
  denominator: number | null;
  missing: number;
  n: number;
};
