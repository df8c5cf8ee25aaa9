import type { RateFigure } from "@/lib/audit/figure";
import type { Flagged, PageFlags } from "@/lib/audit/flagged";
import { lowerIsBetter } from "@/lib/audit/nearest-seen";
import { byKey } from "./by-key";
import { valueWords } from "./figure-line";
import { promiseOf } from "./flag-levels";
import { titleOf, unitName } from "./measure-words";
import { count, decimal, percent } from "./quantity";

/** A figure that stands out beyond chance, in a sentence that is no verdict on anyone; `name` is the clinician's. */
export function flagWords({ figure, pooled, flag }: Flagged, name: string): string {
  const { numerator, denominator } = figure;
  const units = `${count(numerator)} of ${count(denominator)} ${unitName(figure, denominator)}`;
  const estimate = valueWords(figure, numerator / denominator);
  const better = (flag.direction === "lower") === lowerIsBetter(figure.measure);
  return `${tierWords(flag.tier)}: ${titleOf(figure)}, clinician ${name}, ${units}, ${estimate}; ${flag.direction} than the ${percent(pooled.rate)} of all shown by more than chance easily gives.${better ? " That is the better side: there may be something to learn, or something missing from the records." : ""}`;
}

/** A tier as it is called. */
export function tierWords(tier: Flagged["flag"]["tier"]): string {
  if (tier === null) return "Nothing to see";
  return tier === "look-first" ? "Look first" : "Look";
}

/** The tier as charts take it. */
export function flagMark(tier: Flagged["flag"]["tier"]): "look" | "look first" | null {
  return tier === "look-first" ? "look first" : tier;
}

/** What the figures behind "nothing to see" could have shown. */
export function couldHaveBeenSeen({ figure, pooled, detectable }: Flagged): string {
  if (pooled.rate === 0 || pooled.rate === 1)
    return "with the same in everyone's units there is nothing to compare";
  if (detectable === null) return "so few units would have shown no rate, however far off";
  const side = lowerIsBetter(figure.measure) ? "or more" : "or less";
  return `a true rate of ${percent(detectable)} ${side} would have been seen four times in five`;
}

/** How many figures the page compares, what chance alone does with them, and what the page promises. */
export function promiseWords(page: PageFlags): string {
  if (page.m === 0) return "No clinician's rate on this page can be compared.";
  const outside = decimal(page.chance, page.chance < 10 ? 1 : 0);
  const figures = page.m === 1 ? "One figure is compared" : `${count(page.m)} figures are compared`;
  return `${figures} on this page; by chance alone about ${outside} would lie outside 95 % limits, so that is not a flag here. ${promiseOf(page.levels)}`;
}

/** So many figures one by one are read; more are a wall. */
const mostListed = 6;

/** Which figures take no part because too little is recorded; null where all do. */
export function notAssessableWords(
  figures: readonly RateFigure[],
  nameOf: (figure: RateFigure) => string,
): string | null {
  if (figures.length === 0) return null;
  const byMeasure = byKey(figures, ({ measure }) => measure);
  if (figures.length > mostListed && byMeasure.size > 1) {
    const counted = [...byMeasure.values()].flatMap((some) =>
      some[0] ? [`${titleOf(some[0])} (${count(some.length)})`] : [],
    );
    return `Too little is recorded to judge ${count(figures.length)} figures, so they take no part: clinicians' of ${counted.join(", ")}. Under “Criteria” they are marked as not assessable.`;
  }
  const listed = figures.map(
    (figure) =>
      `${titleOf(figure)} of ${nameOf(figure)} (${count(figure.denominator - figure.notRecorded)} of ${count(figure.denominator)} recorded)`,
  );
  return `Too little is recorded to judge, so these take no part: ${listed.join("; ")}.`;
}

/** How a flag is followed up; figures are a prompt to look. */
export const howToLook =
  "Look in this order: the records, the cases, the equipment, the way of working, and only then the person. A flag is a prompt to look and no verdict on anyone.";
