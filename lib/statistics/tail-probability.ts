import betaCdf from "@stdlib/stats-base-dists-beta-cdf";
import { requireProbability } from "@/lib/statistics/probability";

/** The mid-P tails of a count: at or above it, at or below it, and two-sided. */
export type TailProbability = { upper: number; lower: number; p: number };

/**
 * How far out `x` events among `n` units are where each unit has the probability `theta`, with half
 * the probability of the count itself in each tail (Lancaster 1961, JASA 56:223).
 *
 * With I(x) = P(X ≥ x) = I_θ(x, n − x + 1), the incomplete beta function, taken as 1 at x ≤ 0 and 0
 * at x > n: upper = ½[I(x) + I(x + 1)], lower = 1 − upper, p = 2·the smaller, which
 * is never over 1. That form takes counts which a design effect has divided; with whole ones it is
 * the binomial tail.
 * Without units, or where nothing else could happen, both tails are ½ and p is 1.
 * @param x events, from 0 to `n`; need not be whole
 * @param n units, 0 or more; need not be whole
 * @param theta from 0 to 1
 * @throws RangeError for numbers that cannot be
 */
export function tailProbability(x: number, n: number, theta: number): TailProbability {
  requireProbability(theta, "theta");
  if (!(x >= 0 && x <= n && Number.isFinite(n))) {
    throw new RangeError(`${x} events among ${n} units cannot be`);
  }
  const upper = (atLeast(x, n, theta) + atLeast(x + 1, n, theta)) / 2;
  const lower = 1 - upper;
  return { upper, lower, p: 2 * Math.min(upper, lower) };
}

function atLeast(x: number, n: number, theta: number): number {
  if (x <= 0) return 1;
  return x > n ? 0 : betaCdf(theta, x, n - x + 1);
}
