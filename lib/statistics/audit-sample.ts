import hypergeometricCdf from "@stdlib/stats-base-dists-hypergeometric-cdf";
import { requireCount, requireEventsAmong, requireLevel } from "@/lib/statistics/count-and-level";
import { firstWhole } from "@/lib/statistics/first-whole";
import { twoSidedNormalQuantile } from "@/lib/statistics/normal";
import { requireProbability } from "@/lib/statistics/probability";

/**
 * How many of a population to look at for a proportion known to ± `margin`: n₀ = z²·p(1 − p)/margin², over 1 + n₀/N for a
 * population of N, rounded up (Cochran 1977, Sampling Techniques, ch. 4).
 * @param population units there are, whole
 * @param p the proportion expected, from 0 to 1; ½ asks for the most
 * @param margin half the width wanted, over 0
 * @param level such as 0.95
 * @returns whole, never more than the population
 * @throws RangeError for numbers that cannot be
 */
export function sampleSize(population: number, p: number, margin: number, level: number): number {
  requireCount(population, "population");
  requireProbability(p, "the proportion expected");
  requireLevel(level);
  if (!(margin > 0 && Number.isFinite(margin))) {
    throw new RangeError(`the margin must be over 0: ${margin}`);
  }
  if (population === 0) return 0;
  const unlimited = (twoSidedNormalQuantile(level) ** 2 * p * (1 - p)) / margin ** 2;
  return Math.ceil(unlimited / (1 + unlimited / population));
}

/**
 * How many of a population have a property when `m` of `n` looked at, drawn without replacement, have it: every count
 * that a one-sided test at half of 1 − level, by the hypergeometric distribution, does not reject on either side. Compared in single precision, so that rounding makes no tie a win.
 * @param m found, whole, from 0 to `n`
 * @param n looked at, whole, from 0 to `population`
 * @param population whole
 * @param level such as 0.95
 * @returns the least and the greatest count, both whole and possible
 * @throws RangeError for counts or a level that cannot be
 */
export function hypergeometricInterval(
  m: number,
  n: number,
  population: number,
  level: number,
): { lower: number; upper: number } {
  requireEventsAmong(m, n);
  requireEventsAmong(n, population);
  requireLevel(level);
  const tail = (1 - level) / 2;
  const over = (probability: number) => Math.fround(probability) > Math.fround(tail);
  // P(X ≥ m) rises with the count, P(X ≤ m) with those that lack it: each end is where its tail comes over.
  const having = firstWhole(m, population - (n - m), (count) =>
    over(1 - hypergeometricCdf(m - 1, population, count, n)),
  );
  const lacking = firstWhole(n - m, population - m, (count) =>
    over(hypergeometricCdf(m, population, population - count, n)),
  );
  return { lower: having, upper: population - lacking };
}
