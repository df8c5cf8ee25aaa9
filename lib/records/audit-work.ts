/**
 * What people write into an audit. Moments are ISO 8601 in UTC, days YYYY-MM-DD, so that it goes into canonical JSON as it is.
 */

/** What an audit is of. */
export type AuditForm = {
  readonly id: number;
  /** Null is the whole group. */
  readonly practice: string | null;
  /** A period's name. */
  readonly period: string;
  /** Ids of its criteria, in page order. */
  readonly criteria: readonly string[];
  /** The audit that it repeats. */
  readonly previous: number | null;
  readonly by: string;
  readonly at: string;
};

/** A text in force, with its revision, counted from 1. */
export type AuditTextRow = {
  readonly key: string;
  readonly revision: number;
  readonly text: string;
  readonly by: string;
  readonly at: string;
};

/** The steps of a closer look, in their order: the person last. */
export const lookSteps = ["data", "cases", "equipment", "process", "person"] as const;
export type LookStep = (typeof lookSteps)[number];

/** The closer look at a flag ended at a step. */
export type LookEnd = {
  readonly flag: string;
  readonly step: string;
  readonly by: string;
  readonly at: string;
};

/** The window in which clinicians confirm their records; null where none was opened. */
export type ConfirmWindow = {
  /** The last day. */
  readonly until: string;
  readonly closedBy: string | null;
  readonly closedAt: string | null;
};

export type Confirmation = {
  readonly clinicianKey: string;
  readonly by: string;
  readonly at: string;
};

/** A visit that a clinician says is not theirs, or wrong. */
export type Dispute = {
  readonly id: number;
  readonly clinicianKey: string;
  readonly practice: string;
  readonly sessionId: string;
  readonly kind: "not-mine" | "wrong";
  readonly note: string;
  readonly by: string;
  readonly at: string;
  readonly answer: string | null;
  readonly answeredBy: string | null;
  readonly answeredAt: string | null;
};

export type ActionState = "open" | "done" | "dropped";

export type ActionNews = {
  readonly state: ActionState;
  readonly text: string;
  readonly by: string;
  readonly at: string;
};

/** What was agreed to be done, and what became of it, oldest first. */
export type AuditAction = {
  readonly id: number;
  readonly audit: number;
  /** The measure or criterion/<id> that it is about. */
  readonly measure: string | null;
  readonly what: string;
  readonly why: string;
  readonly owner: string;
  readonly ownerId: string | null;
  readonly due: string;
  readonly know: string;
  readonly by: string;
  readonly at: string;
  readonly news: readonly ActionNews[];
};

/** All that people wrote into an audit. */
export type AuditWork = {
  readonly texts: readonly AuditTextRow[];
  readonly window: ConfirmWindow | null;
  readonly confirmations: readonly Confirmation[];
  readonly disputes: readonly Dispute[];
  readonly looks: readonly LookEnd[];
  readonly actions: readonly AuditAction[];
  /** Actions of the audits before, as they stand. */
  readonly earlier: readonly AuditAction[];
};

/** How an action stands. */
export function stateOf({ news }: Pick<AuditAction, "news">): ActionState {
  return news.at(-1)?.state ?? "open";
}
