import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { requireLevel } from "@/lib/statistics/count-and-level";
import type { Interval } from "@/lib/statistics/interval";
import { quantile } from "@/lib/statistics/quantile";
import { type EstimateWithEnds, squareAndAdd } from "@/lib/statistics/square-and-add";

/** How much higher one median is than another, in the unit of the values. */
export type MedianDifference = { estimate: number; interval: Interval | undefined };

/**
 * The median of `b` less the median of `a` (type 7), with the interval from their Woodruff ends by
 * squaring and adding (Zou & Donner 2008, Stat Med 27:1693). The groups are taken as independent:
 * leave the person out of the practice they are compared with.
 * @param a the finite values of each cluster of the first group, in any order, left as they are
 * @param b those of the second
 * @param level such as 0.95
 * @returns undefined where a group has no values; without interval where a median has none
 * @throws RangeError for a value that is not finite, or a level that cannot be
 */
export function medianDifference(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
  level: number,
): MedianDifference | undefined {
  const ofA = clusteredMedianInterval(a, level);
  const ofB = clusteredMedianInterval(b, level);
  const medianA = quantile(a.flat(), 0.5);
  const medianB = quantile(b.flat(), 0.5);
  if (medianA === undefined || medianB === undefined) return undefined;
  if (ofA === undefined || ofB === undefined) {
    return { estimate: medianB - medianA, interval: undefined };
  }
  return medianDifferenceOf({ ...ofA, estimate: medianA }, { ...ofB, estimate: medianB }, level);
}

/**
 * The same from medians with their ends, which a database can gather.
 * @param level the level that both pairs of ends were made for
 * @throws RangeError for an estimate outside its ends, an end that is not finite, or a level that cannot be
 */
export function medianDifferenceOf(
  a: EstimateWithEnds,
  b: EstimateWithEnds,
  level: number,
): MedianDifference & { interval: Interval } {
  requireLevel(level);
  for (const { lower, estimate, upper } of [a, b]) {
    if (!(lower <= estimate && estimate <= upper && Number.isFinite(upper - lower))) {
      throw new RangeError(`a median lies between its ends: ${lower}, ${estimate}, ${upper}`);
    }
  }
  const ends = squareAndAdd(b, a);
  return {
    estimate: b.estimate - a.estimate,
    interval: { lower: ends.lower, upper: ends.upper, level, method: "median-difference" },
  };
}
