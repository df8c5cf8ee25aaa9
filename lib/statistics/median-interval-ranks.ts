import binomialCdf from "@stdlib/stats-base-dists-binomial-cdf";
import { requireCount, requireLevel } from "@/lib/statistics/count-and-level";
import { firstWhole } from "@/lib/statistics/first-whole";

/** 1-based ranks in ascending order, and the coverage that they reach. */
export type MedianIntervalRanks = { lower: number; upper: number; coverage: number };

/**
 * The ranks k and n + 1 − k of the order statistics that bound the median: k is the largest whose
 * coverage, 1 − 2·P(X < k) with X binomial (n, ½), reaches the level.
 * Found by bisection, so millions of values cost no more than
 * a few dozen evaluations.
 * @param n number of values, whole
 * @param level such as 0.95
 * @returns undefined where even the whole range does not reach the level (n ≤ 5 at 95 %)
 * @throws RangeError for a count or a level that cannot be
 */
export function medianIntervalRanks(n: number, level: number): MedianIntervalRanks | undefined {
  requireCount(n, "number of values");
  requireLevel(level);
  // In single precision, so that rounding does not tell a level from one that is exactly reached, such as 0.96875 with six
  // values; relative to what lies outside, so that levels close to 1 keep their meaning.
  const allowed = Math.fround(1 - level);
  const fails = (rank: number) => Math.fround(outside(rank, n)) > allowed;
  // Rank 1 and n are the widest pair; past half of the values the two ends have met.
  const lower = firstWhole(1, n, fails) - 1;
  if (lower === 0) return undefined;
  return { lower, upper: n + 1 - lower, coverage: 1 - outside(lower, n) };
}

/** The probability that the median lies outside the pair of ranks. */
function outside(rank: number, n: number): number {
  return 2 * binomialCdf(rank - 1, n, 0.5);
}
