import type { Criterion } from "@/lib/protocol/criterion";
import { criterionWords } from "./protocol/criterion-words";

/** Which units a criterion counts, in words. */
export function criterionPopulation(criterion: Criterion): string {
  return criterionWords(criterion, {}).population;
}
