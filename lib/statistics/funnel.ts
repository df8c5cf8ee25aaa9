import binomialCdf from "@stdlib/stats-base-dists-binomial-cdf";
import binomialQuantile from "@stdlib/stats-base-dists-binomial-quantile";
import { requireCount } from "@/lib/statistics/count-and-level";
import { requireInnerProbability, requireProbability } from "@/lib/statistics/probability";

export { overdispersion } from "@/lib/statistics/overdispersion";
export { tailProbability } from "@/lib/statistics/tail-probability";

/**
 * The limit of a funnel plot, as a proportion, which leaves the probability `tail` below it: the
 * interpolated exact binomial of Spiegelhalter 2005, Stat Med 24:1185. With r the smallest count
 * whose P(X ≤ r) reaches the tail: (r − α)/n, α = (P(X ≤ r) − tail)/P(X = r).
 *
 * Raw: it may leave [0, 1] by up to 1/n and is clipped only when drawn. A point outside such a line
 * is not a flag (see `flags`), for these limits are too narrow for rare events.
 * @param theta the rate around which the funnel lies, from 0 to 1
 * @param n units, whole
 * @param tail probability below the limit: .025 and .975 for 95 %, .001 and .999 for 99.8 %
 * @returns undefined where theta is 0 or 1, or without units
 * @throws RangeError for numbers that cannot be
 */
export function funnelLimits(theta: number, n: number, tail: number): number | undefined {
  requireProbability(theta, "theta");
  requireCount(n, "number of units");
  requireInnerProbability(tail, "the tail");
  if (theta === 0 || theta === 1 || n === 0) return undefined;
  const count = binomialQuantile(tail, n, theta);
  const upTo = binomialCdf(count, n, theta);
  const below = binomialCdf(count - 1, n, theta);
  return (count - (upTo - tail) / (upTo - below)) / n;
}
