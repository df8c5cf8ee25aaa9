import gammaCdf from "@stdlib/stats-base-dists-gamma-cdf";
import gammaQuantile from "@stdlib/stats-base-dists-gamma-quantile";
import { bisect } from "@/lib/statistics/bisection";
import { requireCount, requireLevel } from "@/lib/statistics/count-and-level";
import type { Ends, Interval, IntervalMethod } from "@/lib/statistics/interval";

/**
 * The exact interval of a Poisson rate, events per exposure (Garwood 1936, Biometrika 28:437), by gamma quantiles; at
 * least `level` is covered whatever the truth. Lower end exactly 0 at no events.
 * @param events whole, 0 or more
 * @param exposure what they are counted over, in any unit, 0 or more; 0 has no interval
 * @param level such as 0.95
 * @throws RangeError for events, an exposure or a level that cannot be
 */
export function poissonExact(
  events: number,
  exposure: number,
  level: number,
): Interval | undefined {
  return interval(events, exposure, level, "poisson-exact", (tail) => ({
    lower: events === 0 ? 0 : gammaQuantile(tail, events, 1),
    upper: gammaQuantile(1 - tail, events + 1, 1),
  }));
}

/**
 * The interval of a Poisson rate with half the probability of the count seen (Cohen & Yang 1994, Stat Med 13:2189), its
 * ends found to the precision of doubles. Arguments, absence and errors as in {@link poissonExact}.
 */
export function poissonMidP(events: number, exposure: number, level: number): Interval | undefined {
  return interval(events, exposure, level, "poisson-mid-p", (tail) => {
    const exact = gammaQuantile(1 - tail, events + 1, 1);
    return {
      lower: events === 0 ? 0 : bisect((mean) => midTail(events, mean) >= tail, 0, exact),
      upper: bisect((mean) => midTail(events, mean) >= 1 - tail, 0, exact),
    };
  });
}

/** P(X > events) + ½·P(X = events) at a mean; rises with the mean. */
function midTail(events: number, mean: number): number {
  const atLeast = events === 0 ? 1 : gammaCdf(mean, events, 1);
  return (atLeast + gammaCdf(mean, events + 1, 1)) / 2;
}

function interval(
  events: number,
  exposure: number,
  level: number,
  method: IntervalMethod,
  ends: (tail: number) => Ends,
): Interval | undefined {
  requireCount(events, "number of events");
  requireLevel(level);
  if (!(exposure >= 0 && Number.isFinite(exposure))) {
    throw new RangeError(`an exposure must be a finite number, 0 or more: ${exposure}`);
  }
  if (exposure === 0) return undefined;
  const { lower, upper } = ends((1 - level) / 2);
  return { lower: lower / exposure, upper: upper / exposure, level, method };
}
