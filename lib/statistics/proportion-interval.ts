import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { requireEventsAmong, requireLevel } from "@/lib/statistics/count-and-level";
import type { Ends, Interval, IntervalMethod } from "@/lib/statistics/interval";
import { midPEnds } from "@/lib/statistics/mid-p-ends";
import { twoSidedNormalQuantile } from "@/lib/statistics/normal";
import { wilsonEnds } from "@/lib/statistics/wilson-ends";

export { wilsonEnds };

/**
 * Wilson's score interval without continuity correction (Newcombe 1998, Stat Med 17:857, method 3).
 * @param x events, whole, from 0 to `n`
 * @param n units, whole; 0 has no interval
 * @param level such as 0.95
 * @throws RangeError for counts or a level that cannot be
 */
export function wilson(x: number, n: number, level: number): Interval | undefined {
  return interval(x, n, level, "wilson", () => wilsonEnds(x / n, n, twoSidedNormalQuantile(level)));
}

/**
 * The exact interval of Clopper & Pearson 1934, Biometrika 26:404, by beta quantiles; at least
 * `level` is covered whatever the truth. Arguments, absence and errors as in {@link wilson}.
 */
export function clopperPearson(x: number, n: number, level: number): Interval | undefined {
  return interval(x, n, level, "clopper-pearson", (tail) => ({
    lower: x === 0 ? 0 : betaQuantile(tail, x, n - x + 1),
    upper: x === n ? 1 : betaQuantile(1 - tail, x + 1, n - x),
  }));
}

/**
 * The exact binomial interval with half the probability of the count seen (Newcombe 1998, Stat Med
 * 17:857, method 6), its ends found to the precision of doubles. Arguments, absence and errors as
 * in {@link wilson}.
 */
export function midP(x: number, n: number, level: number): Interval | undefined {
  return interval(x, n, level, "mid-p", (tail) => midPEnds(x, n, tail));
}

/**
 * The equal-tailed interval from Jeffreys' prior, its end set to 0 at no events and 1 at nothing
 * but events (Brown, Cai, DasGupta 2001, Stat Sci 16:101). Arguments, absence and errors as in
 * {@link wilson}.
 */
export function jeffreys(x: number, n: number, level: number): Interval | undefined {
  return interval(x, n, level, "jeffreys", (tail) => ({
    lower: x === 0 ? 0 : betaQuantile(tail, x + 0.5, n - x + 0.5),
    upper: x === n ? 1 : betaQuantile(1 - tail, x + 0.5, n - x + 0.5),
  }));
}

function interval(
  x: number,
  n: number,
  level: number,
  method: IntervalMethod,
  ends: (tail: number) => Ends,
): Interval | undefined {
  requireEventsAmong(x, n);
  requireLevel(level);
  if (n === 0) return undefined;
  const { lower, upper } = ends((1 - level) / 2);
  return { lower, upper, level, method };
}
