import type { Measured } from "@/lib/measures/measured";
import { measureOf, measures } from "@/lib/measures/measures";
import { criterionId } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { criterionPopulation } from "./criterion-population";
import { unrecordedWords } from "./unrecorded-words";

/** The title of a measure or criterion. */
export function titleOf({ measure, criterion }: Measured): string {
  return criterion?.title ?? measureOf(measure).title;
}

/** The title of what an address names, as far as it is known to all; null where it is not. */
export function titleAt(address: string): string | null {
  const id = criterionId(address);
  const known =
    id === undefined
      ? measures.find((one) => one.id === address)
      : defaults.find((one) => one.id === id);
  return known?.title ?? null;
}

/** What the figure is, exactly, in words. */
export function definitionOf({ measure, criterion }: Measured): string {
  if (!criterion) return measureOf(measure).definition;
  const left = criterion.exclusions.map((one) => one.inWords);
  return `${criterion.statement} Units met, of those eligible and not excepted. ${unrecordedWords(criterion)}${left.length > 0 ? ` Left out: ${left.join("; ")}.` : ""}`;
}

/** Which units are counted, in words. */
export function populationOf({ measure, criterion }: Measured): string {
  return criterion ? criterionPopulation(criterion) : measureOf(measure).population;
}

/** Where the definition comes from. */
export function sourceOf({ measure, criterion }: Measured): string {
  return criterion?.source ?? measureOf(measure).source;
}

/** What one unit is called, for a count. */
export function unitName({ measure, criterion }: Measured, units: number): string {
  const name = criterion?.unit ?? measureOf(measure).per;
  if (units === 1) return name;
  return name === "delivery" ? "deliveries" : `${name}s`;
}
