import type { Criterion } from "./criterion";
import { listsIn } from "./looked-at";

/**
 * Does an overall score of visits count the criterion. A chair's day is of no visit; what looks at the gaps that others
 * leave is about the record, and would count each of them twice.
 */
export function countsOverall({ unit, met }: Criterion): boolean {
  return unit !== "chair-day" && !listsIn(met).includes("gaps");
}
