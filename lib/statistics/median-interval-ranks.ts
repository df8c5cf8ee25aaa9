import binomialCdf from "@stdlib/stats-base-dists-binomial-cdf";
import { requireCount, requireLevel } from "@/lib/statistics/count-and-level";

/** 1-based ranks in ascending order, and the coverage that they reach. */
export type MedianIntervalRanks = { lower: number; upper: number; coverage: number };

// Absorbs rounding where a level is exactly reached, such as 0.96875 with six values. It is relative
// to what lies outside, so that levels close to 1 keep their meaning.
const ROUNDING = 1e-12;

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
  const allowed = (1 - level) * (1 + ROUNDING);
  const reaches = (rank: number) => outside(rank, n) <= allowed;
  // Rank 1 and n are the widest pair; past half of the values the two ends would meet.
  let reaching = 0;
  let failing = Math.floor(n / 2) + 1;
  while (failing - reaching > 1) {
    const middle = Math.floor((reaching + failing) / 2);
    if (reaches(middle)) reaching = middle;
    else failing = middle;
  }
  if (reaching === 0) return undefined;
  return { lower: reaching, upper: n + 1 - reaching, coverage: 1 - outside(reaching, n) };
}

/** The probability that the median lies outside the pair of ranks. */
function outside(rank: number, n: number): number {
  return 2 * binomialCdf(rank - 1, n, 0.5);
}
