import { meanMovingRange } from "@/lib/statistics/moving-range";

/** Centre and limits of single values. */
export type IndividualsLimits = {
  centre: number;
  lower: number;
  upper: number;
  movingRange: number;
};

// 3/d₂ to six decimals, d₂ = 1.128 for ranges of two (Montgomery, Introduction to Statistical
// Quality Control, appendix of factors).
const RANGES_TO_LIMIT = 2.659574;

/**
 * The mean of single values ± 2.659574 mean moving ranges (see `meanMovingRange`).
 * @param values in order of time, null for a gap
 * @returns undefined where no two values stand beside each other
 */
export function individualsLimits(
  values: readonly (number | null)[],
): IndividualsLimits | undefined {
  const movingRange = meanMovingRange(values);
  if (movingRange === undefined) return undefined;
  const present = values.filter((value) => value !== null);
  const centre = present.reduce((all, value) => all + value, 0) / present.length;
  const reach = RANGES_TO_LIMIT * movingRange;
  return { centre, lower: centre - reach, upper: centre + reach, movingRange };
}
