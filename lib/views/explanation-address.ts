/** Where a unit of a criterion is; of a chair's day the visit, canal and number are absent. */
export type UnitPlace = {
  readonly practice: string;
  readonly sessionId: string | null;
  readonly chair: string;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  readonly canal: string | null;
  /** Of a delivery or use, its number in the canal. */
  readonly seq: number | null;
};

/** The page that says why a unit counts as it does. */
export function explanationAddress(criterionId: string, at: UnitPlace): string {
  const path = [
    "",
    "explanations",
    criterionId,
    at.practice,
    ...(at.sessionId === null ? ["chair", at.chair, at.day] : ["visit", at.sessionId]),
  ];
  const asked = new URLSearchParams();
  if (at.canal) asked.set("canal", at.canal);
  if (at.seq !== null) asked.set("seq", String(at.seq));
  const query = asked.toString();
  return `${path.map(encodeURIComponent).join("/")}${query ? `?${query}` : ""}`;
}
