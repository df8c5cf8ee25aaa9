import type { Period } from "@/lib/records/period";
import type { ClusterCounts, Subject } from "./tally";

/** Opportunities met and not; those with a unit not recorded and none not met stand apart from the others not met. */
export type MetCounts = {
  readonly met: number;
  readonly of: number;
  readonly notRecorded: number;
};

/**
 * The opportunities of a subject's visits in a period: one a criterion and visit with an eligible, not excepted unit, met
 * when all those units are met.
 */
export type OpportunityTally = {
  readonly subject: Subject;
  readonly period: Period;
  readonly opportunities: MetCounts;
  /** Visits with an opportunity, met when every one of them was; not recorded where some are and none is not met. */
  readonly visits: MetCounts;
  /** Opportunities over visits as clusters. */
  readonly clusters: ClusterCounts;
  /** By criterion's id, in page order. */
  readonly byCriterion: readonly (MetCounts & { readonly criterion: string })[];
};
