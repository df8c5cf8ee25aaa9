import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import binomialQuantile from "@stdlib/stats-base-dists-binomial-quantile";
import { requireCount } from "@/lib/statistics/count-and-level";
import { requireInnerProbability, requireProbability } from "@/lib/statistics/probability";
import { tailProbability } from "@/lib/statistics/tail-probability";

/**
 * The smallest true rate over `theta` that `n` units would have shown: the smallest θ₁ with
 * P(X ≥ c | θ₁) ≥ power, c the smallest count whose upper mid-P tail at theta is under `tail`.
 * A lone outlier among m figures has to clear tail = .05/(2m). Exact, computed from the binomial.
 * @param n units, whole; an effective number has to be rounded (down, to promise no more)
 * @param theta the rate compared with, from 0 to 1
 * @param tail over 0 and under ½
 * @param power such as 0.8; strictly between 0 and 1
 * @returns undefined where not even n events among n would be seen. Where theta itself has the
 *   power (only for a power under twice the tail), theta
 * @throws RangeError for numbers that cannot be
 */
export function smallestDetectable(
  n: number,
  theta: number,
  tail: number,
  power: number,
): number | undefined {
  requireCount(n, "number of units");
  requireProbability(theta, "theta");
  requireInnerProbability(2 * tail, "twice the tail");
  requireInnerProbability(power, "the power");
  const seen = (count: number) => tailProbability(count, n, theta).upper < tail;
  if (!seen(n)) return undefined;
  // The first count that leaves no more than the tail above it; itself seen if half of its own
  // probability still fits in, else the next one is.
  const nearly = binomialQuantile(1 - tail, n, theta);
  const smallest = seen(nearly) ? nearly : nearly + 1;
  return Math.max(theta, betaQuantile(power, smallest, n - smallest + 1));
}
