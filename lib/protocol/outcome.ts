import type { Criterion, Outcome } from "./criterion";
import type { JudgedUnit } from "./judged-unit";
import { truthOf } from "./truth";

/**
 * What a criterion makes of one unit; undefined where the unit is not of its population. In this order: a reason to
 * leave it out that is known to hold; met; a coded reason; what cannot be told; not met.
 *
 * The store compiles the same order to SQL (lib/store/figures/criterion-sql); tests hold the two equal.
 */
export function outcomeOf(criterion: Criterion, unit: JudgedUnit): Outcome | undefined {
  const member = truthOf(criterion.population, unit);
  if (member === false) return undefined;
  if (criterion.treatmentPopulation && unit.exclusion !== null)
    return { outcome: "excluded", reason: unit.exclusion };
  const left = criterion.exclusions.map(({ when }) => truthOf(when, unit));
  const first = criterion.exclusions[left.indexOf(true)];
  if (first) return { outcome: "excluded", reason: first.reason };
  const eligible = member === true && !left.includes(undefined);
  const met = truthOf(criterion.met, unit);
  if (eligible && met === true) return { outcome: "met" };
  if (criterion.exceptions !== null && unit.exception !== null)
    return { outcome: "excepted", reason: unit.exception };
  return { outcome: eligible && met === false ? "not met" : "not recorded" };
}
