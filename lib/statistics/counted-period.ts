import { requireEventsAmong } from "@/lib/statistics/count-and-level";

/** The counts of a period; null, or one without units, is a gap. */
export type CountedPeriod = { events: number; units: number } | null;

/**
 * The periods with those without units made gaps.
 * @throws RangeError for counts that cannot be
 */
export function withoutEmpty(periods: readonly CountedPeriod[]): CountedPeriod[] {
  return periods.map((period) => {
    if (period === null) return null;
    requireEventsAmong(period.events, period.units);
    return period.units === 0 ? null : period;
  });
}

/** The pooled rate of the periods that are no gaps; NaN where all are. */
export function pooledRate(periods: readonly CountedPeriod[]): number {
  let events = 0;
  let units = 0;
  for (const period of periods) {
    events += period?.events ?? 0;
    units += period?.units ?? 0;
  }
  return events / units;
}

/** The standard error of a rate from `units` where the true one is `rate`. */
export function binomialError(rate: number, units: number): number {
  return Math.sqrt((rate * (1 - rate)) / units);
}
