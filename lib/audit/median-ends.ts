import type { MedianEnds } from "@/lib/measures/tally";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";

/** What the store needs to fetch the ends of a median's intervals at a level: by order statistics, and by Woodruff 1952. */
export function medianEnds(level: number): MedianEnds {
  return {
    ranks: (n) => medianIntervalRanks(n, level),
    reach: (clusters) => tQuantileOf(clusters, level),
  };
}
