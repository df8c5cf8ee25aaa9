import type { Measured } from "@/lib/measures/measured";

/** Do the measure's units sit in no patient: days of a chair, and instruments that pass from one patient to the next. */
export function sitsInNoPatient({ measure, criterion }: Measured): boolean {
  return measure === "separation-per-instrument" || criterion?.unit === "chair-day";
}
