import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import { requireCount } from "@/lib/statistics/count-and-level";
import { individualsLimits } from "@/lib/statistics/individuals-limits";

/** A month's value (such as a median) and the units behind it; null is a gap. */
export type ValuedPeriod = { value: number; n: number } | null;

/** The chart, or why it is not drawn. */
export type XmrChart =
  | (ControlChart & { drawn: true; movingRange: number })
  | { drawn: false; reason: "no-neighbours" | "no-variation" | "uneven-months" };

// Notes on measures: the median of fewer units says too little to stand as a month.
export const FEWEST_UNITS = 10;
// Beyond it the months' values differ too much in their own precision for one pair of limits.
const LARGEST_OVER_SMALLEST = 4;

/**
 * An XmR chart: the mean of the baseline ± 2.659574 mean moving ranges, unscreened (Montgomery,
 * Introduction to Statistical Quality Control). Months with fewer than 10 units are gaps, and no
 * range is taken across a gap.
 * @param periods in order of time
 * @param baseline periods that give centre and limits; all when left out
 * @returns not drawn, with the reason, where the largest n is over 4 times the smallest (gaps
 *   apart), no two periods of the baseline stand beside each other, or they do not vary
 * @throws RangeError for a value that is not finite, an n that is no count, or a baseline that
 *   cannot be
 */
export function xmrChart(periods: readonly ValuedPeriod[], baseline?: BaselineRange): XmrChart {
  const present = periods.map(withEnough);
  const values = present.map((period) => period?.value ?? null);
  const limits = individualsLimits(withinBaseline(values, baseline));
  if (limits === undefined) return { drawn: false, reason: "no-neighbours" };
  const { centre, lower, upper, movingRange } = limits;
  if (movingRange === 0) return { drawn: false, reason: "no-variation" };
  const sizes = present.filter((period) => period !== null).map((period) => period.n);
  if (Math.max(...sizes) > LARGEST_OVER_SMALLEST * Math.min(...sizes)) {
    return { drawn: false, reason: "uneven-months" };
  }
  const points = values.map((value) => (value === null ? null : controlPoint(value, lower, upper)));
  return { drawn: true, centre, points, movingRange };
}

function withEnough(period: ValuedPeriod): ValuedPeriod {
  if (period === null) return null;
  requireCount(period.n, "number of units");
  if (!Number.isFinite(period.value)) {
    throw new RangeError(`a value must be a finite number: ${period.value}`);
  }
  return period.n < FEWEST_UNITS ? null : period;
}
