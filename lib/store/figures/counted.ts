import type { MedianEnds, StratumKind, SubjectKind } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import type { ClusterRow } from "./cluster-sums-sql";

export type Asked = {
  /** Ids of measures, or criterion/<id>. */
  readonly measures: readonly string[];
  readonly periods: readonly Period[];
  readonly by: readonly SubjectKind[];
  readonly ends: MedianEnds;
  /** Counts without the order statistics of continuous measures and without patients. */
  readonly countsAlone?: boolean;
  /** What is measured of canals apart by technique or by case. */
  readonly strata?: StratumKind;
};

/**
 * One row of counts: a measure, a period, a subject, and why units are left out. The cluster sums are of the measure,
 * period and subject as a whole, so the same in each of its rows.
 */
export type CountRow = ClusterRow & {
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
