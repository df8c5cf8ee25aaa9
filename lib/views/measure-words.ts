import { measureOf, measures } from "@/lib/measures/measures";
import { criterionOf } from "@/lib/protocol/criteria";

/** The title of a measure or criterion. */
export function titleOf(measure: string): string {
  return criterionOf(measure)?.title ?? measureOf(measure).title;
}

/** The title of what an address names; null where that is neither a measure nor a criterion. */
export function titleAt(address: string): string | null {
  return criterionOf(address)?.title ?? measures.find((one) => one.id === address)?.title ?? null;
}

/** What the figure is, exactly, in words. */
export function definitionOf(measure: string): string {
  const criterion = criterionOf(measure);
  if (!criterion) return measureOf(measure).definition;
  const left = criterion.exclusions.map((one) => one.inWords);
  return `${criterion.statement} Units met, of those eligible and not excepted; what is not recorded counts as not met.${left.length > 0 ? ` Left out: ${left.join("; ")}.` : ""}`;
}

/** Which units are counted, in words. */
export function populationOf(measure: string): string {
  return criterionOf(measure)?.populationInWords ?? measureOf(measure).population;
}

/** Where the definition comes from. */
export function sourceOf(measure: string): string {
  return criterionOf(measure)?.source ?? measureOf(measure).source;
}

/** What one unit is called, for a count. */
export function unitName(measure: string, units: number): string {
  const name = criterionOf(measure)?.unit ?? measureOf(measure).per;
  return units === 1 ? name : `${name}s`;
}
