import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import { individualsLimits } from "@/lib/statistics/individuals-limits";

// Makes Weibull times of a constant rate about normal (Nelson 1994, J Qual Technol 26:239).
const ROOT = 3.6;

/**
 * A t chart of the days between rare events: y = t^(1/3.6) (Nelson 1994, J Qual Technol 26:239), on
 * it the mean ± 2.659574 mean moving ranges, and all transformed back; the lower end set to 0.
 * @param days closed gaps in order of time, 0 or more, whole or not
 * @param open days since the last event: drawn as the last point, not averaged. It can lie above
 *   (it is at least that long) and never below, for it has not ended
 * @param baseline gaps that give centre and limits; all when left out
 * @returns undefined with fewer than two closed gaps, or where they do not vary
 * @throws RangeError for days or a baseline that cannot be
 */
export function tChart(
  days: readonly number[],
  open?: number,
  baseline?: BaselineRange,
): ControlChart | undefined {
  for (const day of days) requireDays(day);
  if (open !== undefined) requireDays(open);
  const limits = individualsLimits(withinBaseline(days.map(rooted), baseline));
  if (limits === undefined || limits.movingRange === 0) return undefined;
  const lower = Math.max(0, limits.lower) ** ROOT;
  const upper = limits.upper ** ROOT;
  const points = days.map((day) => controlPoint(day, lower, upper));
  // An open gap cannot lie below, however short it is as yet.
  if (open !== undefined) {
    const { outside } = controlPoint(open, Number.NEGATIVE_INFINITY, upper);
    points.push({ value: open, lower, upper, outside });
  }
  return { centre: limits.centre ** ROOT, points };
}

function rooted(days: number): number {
  return days ** (1 / ROOT);
}

function requireDays(days: number): void {
  if (!(days >= 0 && Number.isFinite(days))) {
    throw new RangeError(`days between events must be a finite number, 0 or more: ${days}`);
  }
}
