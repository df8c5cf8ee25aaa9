/** What of a safety item may still be to do or to write down. */
export type SafetyState = {
  readonly what: "contact" | "separation" | "incident";
  /** null: not recorded. */
  readonly patientTold: boolean | null;
  readonly reported: boolean | null;
  readonly pending: boolean;
};

/** What is still to be done or to be written down about one item, in words; nothing of a contact. */
export function openActions(item: SafetyState): string[] {
  if (item.what === "contact") return [];
  const told =
    item.patientTold === null
      ? "not recorded whether the patient was told"
      : item.patientTold
        ? ""
        : "patient not told";
  const reported =
    item.what === "separation" || item.reported
      ? ""
      : item.reported === null
        ? "not recorded whether it was reported"
        : "not reported";
  return [told, reported, item.pending ? "pending" : ""].filter(Boolean);
}
