import { criterionOf } from "@/lib/protocol/criteria";

/** Do the measure's units sit in no patient: days of a chair, and instruments that pass from one patient to the next. */
export function sitsInNoPatient(measure: string): boolean {
  return measure === "separation-per-instrument" || criterionOf(measure)?.unit === "chair-day";
}
