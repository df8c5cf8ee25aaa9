import type { Values } from "@/lib/records/column";
import { holds } from "./condition";
import type { Criterion, Outcome } from "./criterion";

/**
 * What a criterion makes of one unit. `fields.exclusion` says why a canal is outside the treatment population.
 * The store compiles the same order to SQL (lib/store/figures/criterion-sql); tests hold the two equal.
 */
export function outcomeOf(criterion: Criterion, fields: Values): Outcome {
  if (criterion.treatmentPopulation && fields.exclusion !== undefined) {
    return { outcome: "excluded", reason: String(fields.exclusion) };
  }
  const exclusion = criterion.exclusions.find((one) => holds(one.when, fields));
  if (exclusion) return { outcome: "excluded", reason: exclusion.reason };
  if (holds(criterion.met, fields)) return { outcome: "met" };
  const reason = criterion.exception === null ? undefined : fields[criterion.exception];
  if (reason !== undefined) return { outcome: "excepted", reason: String(reason) };
  return { outcome: holds(criterion.evidence, fields) ? "not met" : "not recorded" };
}
