import type { MedianTally, RateTally } from "@/lib/measures/tally";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";
import { clusteredProportionOf } from "@/lib/statistics/clustered-proportion";
import type { Ends } from "@/lib/statistics/interval";
import { wilson, wilsonEnds } from "@/lib/statistics/proportion-interval";
import type { ClusteredInterval, FigureInterval } from "./figure";
import { level } from "./level";

/** The interval of a rate that allows for units of one patient resembling each other; null where there is none. */
export function clusteredRate(
  tally: Pick<RateTally, "clusters" | "numerator" | "denominator">,
): ClusteredInterval | null {
  const { clusters, numerator, denominator } = tally;
  const found = clusters ? clusteredProportionOf(clusters, level) : undefined;
  if (!clusters || !found?.interval) return null;
  // How much wider compares with plain Wilson, whatever the plain interval beside it.
  const plain = wilson(numerator, denominator, level);
  const { lower, upper, method } = found.interval;
  return {
    lower,
    upper,
    level,
    method,
    designEffect: found.designEffect ?? null,
    effectiveUnits: found.effectiveN ?? null,
    clusters: clusters.clusters,
    timesPlain: plain ? widthOf(found.interval) / widthOf(plain) : null,
  };
}

/** The same of a median, by the ends that the store found. */
export function clusteredMedian(
  tally: Pick<MedianTally, "clustered" | "n">,
  plain: FigureInterval | null,
): ClusteredInterval | null {
  const { clustered, n } = tally;
  if (!clustered) return null;
  const { lower, upper, designEffect, clusters } = clustered;
  const width = plain ? widthOf(plain) : 0;
  return {
    lower,
    upper,
    level,
    method: "woodruff",
    designEffect,
    effectiveUnits: n / Math.max(1, designEffect),
    clusters,
    timesPlain: width > 0 ? widthOf({ lower, upper }) / width : null,
  };
}

/**
 * The ends were every unrecorded unit met: Wilson's at that rate with the effective number of units the recorded ones
 * have; with none of them met or all, which tells nothing of likeness, the patients themselves are the units.
 */
export function endsAtBest(tally: RateTally, clustered: ClusteredInterval): Ends {
  const rate = (tally.numerator + tally.notRecorded) / tally.denominator;
  const reach = tQuantileOf(clustered.clusters, level);
  if (tally.notRecorded === 0 || reach === undefined) return clustered;
  return wilsonEnds(rate, clustered.effectiveUnits ?? clustered.clusters, reach);
}

function widthOf({ lower, upper }: Ends): number {
  return upper - lower;
}
