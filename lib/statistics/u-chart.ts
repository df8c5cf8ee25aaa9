import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import { requireCount } from "@/lib/statistics/count-and-level";

/** Events in a period over an exposure such as uses; null, or no exposure, is a gap. */
export type ExposedPeriod = { events: number; exposure: number } | null;

/**
 * A u chart: events per exposure around the pooled rate of the baseline, ū ± 3√(ū/exposure), the
 * lower end set to 0 (Montgomery, Introduction to Statistical Quality Control).
 * @param periods in order of time; null or exposure 0 is a gap
 * @param baseline periods that give centre and limits; all when left out
 * @returns undefined where the baseline has no exposure or no event
 * @throws RangeError for events that are no count, an exposure below 0 or not finite, events
 *   without exposure, or a baseline that cannot be
 */
export function uChart(
  periods: readonly ExposedPeriod[],
  baseline?: BaselineRange,
): ControlChart | undefined {
  const present = periods.map(withExposure);
  let events = 0;
  let exposure = 0;
  for (const period of withinBaseline(present, baseline)) {
    events += period?.events ?? 0;
    exposure += period?.exposure ?? 0;
  }
  if (events === 0) return undefined;
  const centre = events / exposure;
  const points = present.map((period) => {
    if (period === null) return null;
    const reach = 3 * Math.sqrt(centre / period.exposure);
    const value = period.events / period.exposure;
    return controlPoint(value, Math.max(0, centre - reach), centre + reach);
  });
  return { centre, points };
}

function withExposure(period: ExposedPeriod): ExposedPeriod {
  if (period === null) return null;
  const { events, exposure } = period;
  requireCount(events, "number of events");
  if (!(exposure >= 0 && Number.isFinite(exposure)) || (exposure === 0 && events !== 0)) {
    throw new RangeError(`${events} events over an exposure of ${exposure} cannot be`);
  }
  return exposure === 0 ? null : period;
}
