import type { AuditComputed } from "./audit-content";

/** The share of a period's rows that may be held before the figures cannot be used: a choice of this tool's makers. */
export const mostHeld = 0.02;

/** What the data check found: to be settled before the audit goes on, or to be noted. */
export type DataFinding = {
  readonly id:
    | "no-records"
    | "practices-empty"
    | "held-many"
    | "not-over"
    | "held"
    | "weeks"
    | "floors"
    | "disagreeing";
  readonly kind: "settle" | "note";
};

/**
 * @param today the day of the check, YYYY-MM-DD
 * @param gaps are there weeks without a visit
 */
export function dataFindings(computed: AuditComputed, today: string, gaps: boolean): DataFinding[] {
  const { counts } = computed.records;
  const rows = Object.values(counts).reduce((sum, one) => sum + one, 0);
  if ((counts.sessions ?? 0) === 0) return [{ id: "no-records", kind: "settle" }];
  const heldMany = computed.held > mostHeld * (rows + computed.held);
  const floors = computed.completeness.some(
    ({ share, floor }) => share !== null && floor !== null && share < floor,
  );
  return [
    ...(computed.period.until > today ? [{ id: "not-over", kind: "settle" } as const] : []),
    ...(emptyPractices(computed).length > 0
      ? [{ id: "practices-empty", kind: "settle" } as const]
      : []),
    ...(heldMany ? [{ id: "held-many", kind: "settle" } as const] : []),
    ...(computed.held > 0 && !heldMany ? [{ id: "held", kind: "note" } as const] : []),
    ...(gaps ? [{ id: "weeks", kind: "note" } as const] : []),
    ...(floors ? [{ id: "floors", kind: "note" } as const] : []),
    ...(computed.disagreeing > 0 ? [{ id: "disagreeing", kind: "note" } as const] : []),
  ];
}

/** Codes of practices in scope without a visit in the period. */
export function emptyPractices({ practices, people }: AuditComputed): string[] {
  return practices
    .map(({ code }) => code)
    .filter((code) => !people.some(({ practice, visits }) => practice === code && visits > 0));
}
