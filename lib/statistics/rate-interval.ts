import { bisect } from "@/lib/statistics/bisection";
import { requireCount, requireLevel } from "@/lib/statistics/count-and-level";
import type { Ends, Interval, IntervalMethod } from "@/lib/statistics/interval";
import { poissonAtLeast } from "@/lib/statistics/poisson-tail";

/**
 * The exact interval of a Poisson rate, events per exposure (Garwood 1936, Biometrika 28:437); at
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
    lower: meanWhere((mean) => poissonAtLeast(events, mean) >= tail),
    upper: meanWhere((mean) => poissonAtLeast(events + 1, mean) >= 1 - tail),
  }));
}

/**
 * The interval of a Poisson rate with half the probability of the count seen (Cohen & Yang 1994, Stat Med 13:2189), its
 * ends found to the precision of doubles. Arguments, absence and errors as in {@link poissonExact}.
 */
export function poissonMidP(events: number, exposure: number, level: number): Interval | undefined {
  return interval(events, exposure, level, "poisson-mid-p", (tail) => ({
    lower: meanWhere((mean) => midTail(events, mean) >= tail),
    upper: meanWhere((mean) => midTail(events, mean) >= 1 - tail),
  }));
}

/** P(X > events) + ½·P(X = events) at a mean; rises with the mean. */
function midTail(events: number, mean: number): number {
  return (poissonAtLeast(events, mean) + poissonAtLeast(events + 1, mean)) / 2;
}

/** The mean where a tail comes over; 0 exactly where it is over at 0. */
function meanWhere(over: (mean: number) => boolean): number {
  if (over(0)) return 0;
  // Half of the steps ask far beyond it, where one answer serves for all.
  let beyond = 1;
  while (!over(beyond)) beyond *= 2;
  return bisect((mean) => mean >= beyond || over(mean), 0, Number.MAX_SAFE_INTEGER);
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
