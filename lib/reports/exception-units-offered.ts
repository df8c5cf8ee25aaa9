import type { Criterion } from "@/lib/protocol/criterion";
import type { OwnWork } from "@/lib/store/exceptions/whose-work";

/**
 * For what of a visit a clinician may enter an exception of the criterion: canals by name, the visit as an empty one. Of
 * a criterion of visits it is their visit; of others their canals, and all of them together where nobody else worked there.
 */
export function unitsOffered(criterion: Criterion | undefined, work: OwnWork): string[] {
  if (!criterion?.exceptions || criterion.unit === "chair-day") return [];
  if (criterion.unit === "visit") return work.visit ? [""] : [];
  return [...work.canals, ...(work.whole ? [""] : [])];
}
