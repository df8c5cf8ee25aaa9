import { clusterSums, clusterVariance } from "@/lib/statistics/cluster-sums";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";
import { requireLevel } from "@/lib/statistics/count-and-level";
import type { Interval } from "@/lib/statistics/interval";
import { quantile } from "@/lib/statistics/quantile";

/** An interval for a median of values in clusters; the design effect is that of the share under it. */
export type ClusteredMedianInterval = Interval & { designEffect: number };

/**
 * Woodruff's interval for the median of values in clusters (1952, JASA 47:635). F, the share of
 * values at or below the median, has the variance v of a clustered proportion, taken as no less
 * than F(1 − F)/n; the ends are the type-7 quantiles at ½ ± t(K − 1)·√v. The design effect is
 * v ÷ [F(1 − F)/n] with v as it comes, so it can be under 1.
 * @param clusters the finite values of each, in any order, left as they are; an empty one is not counted
 * @param level such as 0.95
 * @returns undefined under two clusters, where ½ ± t·√v leaves (0, 1), and where no value lies above
 *   the median, so that nothing is known of how F varies
 * @throws RangeError for a value that is not finite, or a level that cannot be
 */
export function clusteredMedianInterval(
  clusters: readonly (readonly number[])[],
  level: number,
): ClusteredMedianInterval | undefined {
  requireLevel(level);
  const values = clusters.flat();
  const median = quantile(values, 0.5);
  if (median === undefined) return undefined;
  const sums = clusterSums(
    clusters.map((cluster) => ({
      events: cluster.filter((value) => value <= median).length,
      units: cluster.length,
    })),
  );
  const variance = clusterVariance(sums);
  const reach = tQuantileOf(sums.clusters, level);
  if (variance === undefined || reach === undefined || sums.events === sums.units) return undefined;
  const share = sums.events / sums.units;
  const independent = (share * (1 - share)) / sums.units;
  const span = reach * Math.sqrt(Math.max(variance, independent));
  if (span >= 0.5) return undefined;
  return {
    lower: quantile(values, 0.5 - span) as number,
    upper: quantile(values, 0.5 + span) as number,
    level,
    method: "woodruff",
    designEffect: variance / independent,
  };
}
