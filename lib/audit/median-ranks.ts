import type { MedianRanks } from "@/lib/measures/tally";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";

/** The ranks that bound a median's interval at a level, for the store to fetch the values at them. */
export function medianRanks(level: number): MedianRanks {
  return (n) => medianIntervalRanks(n, level);
}
