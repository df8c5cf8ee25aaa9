import type { Comparison } from "./comparison";
import type { RateFigure } from "./figure";
import { level } from "./level";
import { nearestSeen } from "./nearest-seen";

/**
 * The nearest true rate, on the side that would be of concern, that a figure's units would have shown against the rate
 * it is compared with (taken as exact), four times in five, by a two-sided test at the level of the intervals. Units
 * are counted as so many independent ones; with none or all of them events, which tells nothing of likeness, as many
 * as there are patients.
 * @returns null where no rate would have been; undefined where it cannot be told: nothing to compare with, none or all
 *   of the others' units events, or too few patients
 */
export function seenAgainst(figure: RateFigure, comparison: Comparison): number | null | undefined {
  const { clustered } = figure;
  const theta = comparison.estimate;
  if (!clustered || theta === null || theta === 0 || theta === 1) return undefined;
  // A hair is added so that rounding does not make 28 of 29.
  const units = Math.floor((clustered.effectiveUnits ?? clustered.clusters) + 1e-9);
  return nearestSeen(figure.measure, units, theta, (1 - level) / 2);
}
