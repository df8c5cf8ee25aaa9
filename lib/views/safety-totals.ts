import { count } from "./quantity";

/** The kinds that a list can be narrowed to. */
export const safetyKindWords = {
  contact: "hypochlorite next to chlorhexidine",
  "separation-untold": "separation, patient not known to have been told",
  "separation-pending": "separation, outcome pending",
  incident: "incident",
} as const;

type Totals = Readonly<Record<keyof typeof safetyKindWords | "open", number>>;

/** What there is in a period, in sentences. A separation may be both untold and pending. */
export function safetyTotals(totals: Totals, own: boolean): string {
  const there = [
    several(
      totals.contact,
      "contact of hypochlorite with chlorhexidine",
      "contacts of hypochlorite with chlorhexidine",
    ),
    several(
      totals["separation-untold"],
      "separation of which the patient is not known to have been told",
      "separations of which the patient is not known to have been told",
    ),
    several(
      totals["separation-pending"],
      "separation that is pending",
      "separations that are pending",
    ),
    several(totals.incident, "incident", "incidents"),
  ].filter(Boolean);
  if (there.length === 0)
    return `The records of this period hold no safety item${own ? " of your work" : ""}. What was not written down does not show here.`;
  const open =
    totals.open === 0
      ? "Nothing of it is open."
      : `Something is still to be done or to be written down about ${count(totals.open)} of them.`;
  return `${own ? "Of your work" : "In these records"}: ${there.join("; ")}. ${open}`;
}

function several(some: number, one: string, more: string): string {
  return some === 0 ? "" : `${count(some)} ${some === 1 ? one : more}`;
}
