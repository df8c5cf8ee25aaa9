import {
  type Cluster,
  type ClusterSums,
  clusterSums,
  clusterVariance,
} from "@/lib/statistics/cluster-sums";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";
import { requireLevel } from "@/lib/statistics/count-and-level";
import type { Interval } from "@/lib/statistics/interval";
import { clopperPearson } from "@/lib/statistics/proportion-interval";
import { wilsonEnds } from "@/lib/statistics/wilson-ends";

/** A proportion whose units sit in clusters, from 0 to 1, and what is known of it. */
export type ClusteredProportion = {
  estimate: number;
  /** 0 where the estimate is 0 or 1; undefined under two clusters */
  standardError: number | undefined;
  /** variance over that of as many independent units, raw: it can be under 1 */
  designEffect: number | undefined;
  /** units ÷ the design effect, and never more than the units */
  effectiveN: number | undefined;
  interval: Interval | undefined;
};

/**
 * A proportion of units in clusters, with the interval that honours them: the variance of Rao &
 * Scott 1992, Biometrics 48:577, v = K/(K − 1)·Σ(eᵢ − p·nᵢ)²/n²; design effect v ÷ [p(1 − p)/n];
 * Wilson's limits at the effective number of units, with Student's t of K − 1 degrees of freedom.
 *
 * Where all or none of the units had the event the clusters do not show how alike their units are:
 * the standard error is 0, design effect and effective number are undefined, and the interval is
 * that of Clopper & Pearson for the clusters with any event (at 1: any unit without it) among all.
 * @param clusters in any order, left as they are; one without units is not counted
 * @param level such as 0.95
 * @returns undefined without units; under two clusters an estimate alone
 * @throws RangeError for counts or a level that cannot be
 */
export function clusteredProportion(
  clusters: readonly Cluster[],
  level: number,
): ClusteredProportion | undefined {
  return clusteredProportionOf(clusterSums(clusters), level);
}

/**
 * The same from sums over the clusters, which a database can gather.
 * @throws RangeError for sums that no clusters can have, or a level that cannot be
 */
export function clusteredProportionOf(
  sums: ClusterSums,
  level: number,
): ClusteredProportion | undefined {
  requireLevel(level);
  const variance = clusterVariance(sums);
  const { clusters, events, units } = sums;
  if (units === 0) return undefined;
  const estimate = events / units;
  const quantile = tQuantileOf(clusters, level);
  if (variance === undefined || quantile === undefined) return only(estimate);
  if (events === 0 || events === units) return allAlike(estimate, clusters, level);
  const designEffect = variance / ((estimate * (1 - estimate)) / units);
  const effectiveN = units / Math.max(1, designEffect);
  const { lower, upper } = wilsonEnds(estimate, effectiveN, quantile);
  return {
    estimate,
    standardError: Math.sqrt(variance),
    designEffect,
    effectiveN,
    interval: { lower, upper, level, method: "clustered-wilson" },
  };
}

function only(estimate: number): ClusteredProportion {
  return {
    estimate,
    standardError: undefined,
    designEffect: undefined,
    effectiveN: undefined,
    interval: undefined,
  };
}

function allAlike(estimate: number, clusters: number, level: number): ClusteredProportion {
  const exact = clopperPearson(estimate * clusters, clusters, level);
  const interval = exact && { ...exact, method: "clustered-clopper-pearson" as const };
  return { ...only(estimate), standardError: 0, interval };
}
