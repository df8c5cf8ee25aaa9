import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import {
  binomialError,
  type CountedPeriod,
  pooledRate,
  withoutEmpty,
} from "@/lib/statistics/counted-period";

/**
 * A p chart: proportions around the pooled one of the baseline, p̄ ± 3√(p̄(1 − p̄)/n) with each
 * period's own n, ends set to 0 and 1 (Montgomery, Introduction to Statistical Quality Control).
 * @param periods in order of time; null or 0 units is a gap
 * @param baseline periods that give centre and limits; all when left out
 * @returns undefined where the baseline has no units, no event, or nothing but events: then no
 *   variation can be told from it
 * @throws RangeError for counts or a baseline that cannot be
 */
export function pChart(
  periods: readonly CountedPeriod[],
  baseline?: BaselineRange,
): ControlChart | undefined {
  const present = withoutEmpty(periods);
  const centre = pooledRate(withinBaseline(present, baseline));
  if (!(centre > 0 && centre < 1)) return undefined;
  const points = present.map((period) => {
    if (period === null) return null;
    const reach = 3 * binomialError(centre, period.units);
    return controlPoint(
      period.events / period.units,
      Math.max(0, centre - reach),
      Math.min(1, centre + reach),
    );
  });
  return { centre, points };
}
