import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import { requireCount } from "@/lib/statistics/count-and-level";

/**
 * A g chart, and whether it can show that events have become more frequent. `probability` is that
 * of the event at a unit.
 */
export type GChart = ControlChart & { probability: number; showsWorsening: boolean };

// What 3 sigma leave on one side of a normal distribution, to five decimals.
const TAIL = 0.00135;

/**
 * A g chart of the units strictly between rare events (Benneyan 2001, Health Care Manag Sci 4:305,
 * with probability limits in place of 3 sigma): geometric with p = 1/(1 + mean), centre its median,
 * limits its quantiles .00135 and .99865.
 *
 * The lower limit is 0 whenever p > .00135, and no gap lies below it: then the chart cannot show
 * worsening (`showsWorsening` false), which is what the CUSUM is for.
 * @param gaps closed ones in order of time, whole
 * @param open units since the last event, whole: drawn as the last point, not averaged. It can lie
 *   above (it is at least that long) and never below, for it has not ended
 * @param baseline gaps that give centre and limits; all when left out
 * @returns undefined without a closed gap
 * @throws RangeError for gaps or a baseline that cannot be
 */
export function gChart(
  gaps: readonly number[],
  open?: number,
  baseline?: BaselineRange,
): GChart | undefined {
  for (const gap of gaps) requireCount(gap, "number of units between events");
  if (open !== undefined) requireCount(open, "number of units since the last event");
  const averaged = withinBaseline(gaps, baseline).filter((gap) => gap !== null);
  if (averaged.length === 0) return undefined;
  const mean = averaged.reduce((all, gap) => all + gap, 0) / averaged.length;
  const probability = 1 / (1 + mean);
  const lower = geometricQuantile(TAIL, probability);
  const upper = geometricQuantile(1 - TAIL, probability);
  const points = gaps.map((gap) => controlPoint(gap, lower, upper));
  // An open gap cannot lie below, however short it is as yet.
  if (open !== undefined) {
    const { outside } = controlPoint(open, Number.NEGATIVE_INFINITY, upper);
    points.push({ value: open, lower, upper, outside });
  }
  return {
    centre: geometricQuantile(1 / 2, probability),
    points,
    probability,
    showsWorsening: probability < TAIL,
  };
}

/** The smallest count k of units before an event with 1 − (1 − p)^(k + 1) at or over the share. */
function geometricQuantile(share: number, probability: number): number {
  return Math.max(0, Math.ceil(Math.log1p(-share) / Math.log1p(-probability) - 1));
}
