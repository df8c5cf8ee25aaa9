import { measures } from "@/lib/measures/measures";
import { smallestDetectable } from "@/lib/statistics/detectable";

/** How often a true difference of the size named would have been seen. */
const power = 0.8;

/**
 * The nearest true rate to `rate`, on the side that would be of concern, that so many independent units would have shown
 * at least four times in five: of what should be rare the smallest higher one, of what should be frequent the highest
 * lower one. Null where none would have been.
 * @param units whole
 * @param tail of the one side, over 0 and under ½
 */
export function nearestSeen(
  measure: string,
  units: number,
  rate: number,
  tail: number,
): number | null {
  if (lowerIsBetter(measure)) return smallestDetectable(units, rate, tail, power) ?? null;
  const mirrored = smallestDetectable(units, 1 - rate, tail, power);
  return mirrored === undefined ? null : 1 - mirrored;
}

/** Is a higher value of concern. */
export function lowerIsBetter(measure: string): boolean {
  return measures.find((one) => one.id === measure)?.lowerIsBetter === true;
}
