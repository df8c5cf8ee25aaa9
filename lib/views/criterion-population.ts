import type { Criterion, UnitKind } from "@/lib/protocol/criterion";

const all: Readonly<Record<UnitKind, string>> = {
  canal: "Every canal at every visit.",
  delivery: "Every delivery of an irrigant, whatever the treatment or outcome of its visit.",
  use: "Every use of an instrument, whatever the treatment or outcome of its visit.",
  separation: "Every separation of an instrument, whatever the treatment or outcome of its visit.",
  visit: "Every visit.",
  "chair-day": "Chairs and days on which a visit with continuous delivery started in the chair.",
};

/** Which units a criterion counts, in words. */
export function criterionPopulation(criterion: Criterion): string {
  return criterion.treatmentPopulation
    ? "Canals of visits that were completed or are continuing, in first treatment or retreatment, that were prepared."
    : all[criterion.unit];
}
