import chisquareQuantile from "@stdlib/stats-base-dists-chisquare-quantile";
import { type BaselineRange, withinBaseline } from "@/lib/statistics/baseline-range";
import { type ControlChart, controlPoint } from "@/lib/statistics/control-point";
import {
  binomialError,
  type CountedPeriod,
  pooledRate,
  withoutEmpty,
} from "@/lib/statistics/counted-period";
import { meanMovingRange } from "@/lib/statistics/moving-range";

// d₂ for ranges of two (Montgomery, Introduction to Statistical Quality Control, appendix).
const RANGE_TO_SIGMA = 1.128;

/**
 * A p′ chart (Laney 2002, Quality Engineering 14:531): as `pChart`, with the limits times
 * σz = MR̄(z)/1.128, z the standardised proportions of the baseline, so that what varies from
 * period to period beyond the binomial is honoured.
 * @returns `sigmaZ` too; undefined where `pChart` is, where no two periods of the baseline stand
 *   beside each other, or where all of these have the same z
 * @throws RangeError for counts or a baseline that cannot be
 */
export function pPrimeChart(
  periods: readonly CountedPeriod[],
  baseline?: BaselineRange,
): (ControlChart & { sigmaZ: number }) | undefined {
  const present = withoutEmpty(periods);
  const inBaseline = withinBaseline(present, baseline);
  const centre = pooledRate(inBaseline);
  if (!(centre > 0 && centre < 1)) return undefined;
  const sigmaZ = (meanMovingRange(standardised(inBaseline, centre)) ?? 0) / RANGE_TO_SIGMA;
  if (sigmaZ === 0) return undefined;
  const points = present.map((period) => {
    if (period === null) return null;
    const reach = 3 * sigmaZ * binomialError(centre, period.units);
    return controlPoint(
      period.events / period.units,
      Math.max(0, centre - reach),
      Math.min(1, centre + reach),
    );
  });
  return { centre, points, sigmaZ };
}

/**
 * Which of the two charts fits: p′ where the proportions of the baseline vary beyond chance, Σz²
 * over the 95 % quantile of χ² with one degree of freedom less than periods; else p.
 * @throws RangeError for counts or a baseline that cannot be
 */
export function chooseP(
  periods: readonly CountedPeriod[],
  baseline?: BaselineRange,
): "p" | "p-prime" {
  const inBaseline = withinBaseline(withoutEmpty(periods), baseline);
  const centre = pooledRate(inBaseline);
  const z = standardised(inBaseline, centre).filter((value) => value !== null);
  const squares = z.reduce((all, value) => all + value ** 2, 0);
  // Where nothing can vary no comparison holds: without units or inner rate it is with NaN, and for
  // one period alone of 0 with 0.
  return squares > chisquareQuantile(0.95, z.length - 1) ? "p-prime" : "p";
}

function standardised(periods: readonly CountedPeriod[], rate: number): (number | null)[] {
  return periods.map(
    (period) => period && (period.events / period.units - rate) / binomialError(rate, period.units),
  );
}
