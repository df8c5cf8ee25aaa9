import { quantileSorted } from "simple-statistics";
import type { Interval } from "@/lib/statistics/interval";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";

/** An interval for a median, with the coverage that its two order statistics reach. */
export type MedianInterval = Interval & { coverage: number };

/**
 * The quantile of type 7 of Hyndman & Fan 1996, Am Stat 50:361: linear between the order
 * statistics around 1 + (n − 1)p, as percentile_cont of PostgreSQL has it.
 * @param values finite numbers in any order, left as they are
 * @param p from 0 to 1, ends included
 * @returns undefined without values
 * @throws RangeError for a value that is not finite, or p outside [0, 1]
 */
export function quantile(values: readonly number[], p: number): number | undefined {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p must lie between 0 and 1: ${p}`);
  const sorted = ascending(values);
  return sorted.length === 0 ? undefined : quantileSorted(sorted, p);
}

/**
 * The order statistics x(k) and x(n + 1 − k) around the median, without any assumption on the
 * shape of the distribution; ranks as in `medianIntervalRanks`.
 * @param values finite numbers in any order, left as they are
 * @param level such as 0.95
 * @returns undefined where there are too few values for the level (5 or fewer at 95 %)
 * @throws RangeError for a value that is not finite, or a level that cannot be
 */
export function medianInterval(
  values: readonly number[],
  level: number,
): MedianInterval | undefined {
  const ranks = medianIntervalRanks(values.length, level);
  const sorted = ascending(values);
  if (ranks === undefined) return undefined;
  const lower = sorted[ranks.lower - 1] as number;
  const upper = sorted[ranks.upper - 1] as number;
  return { lower, upper, level, method: "median-order-statistics", coverage: ranks.coverage };
}

// simple-statistics answers for NaN and for unsorted values as if they were sound, so both are
// settled before it is asked.
function ascending(values: readonly number[]): number[] {
  for (const value of values) {
    if (!Number.isFinite(value)) throw new RangeError(`a value must be a finite number: ${value}`);
  }
  return values.toSorted((a, b) => a - b);
}
