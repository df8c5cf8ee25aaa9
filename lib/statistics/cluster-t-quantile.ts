import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { requireCount, requireLevel } from "@/lib/statistics/count-and-level";

/**
 * The quantile of Student's t with one degree of freedom less than there are clusters that leaves
 * (1 − level)/2 in each tail: how many standard errors a clustered interval reaches.
 * @param clusters those with at least one unit, whole
 * @param level such as 0.95
 * @returns undefined under two clusters, which do not show how clusters differ
 * @throws RangeError for a count or a level that cannot be
 */
export function tQuantileOf(clusters: number, level: number): number | undefined {
  requireCount(clusters, "number of clusters");
  requireLevel(level);
  if (clusters < 2) return undefined;
  if (level !== last.level || last.quantiles.size >= KEPT) last = { level, quantiles: new Map() };
  const known = last.quantiles.get(clusters);
  if (known !== undefined) return known;
  // From the lower tail, which keeps its digits at levels close to 1.
  const found = -tQuantile((1 - level) / 2, clusters - 1);
  last.quantiles.set(clusters, found);
  return found;
}

// A page asks for the same few hundred numbers of patients thousands of times, at one level, and a quantile takes as long
// as all else of an interval.
let last = { level: Number.NaN, quantiles: new Map<number, number>() };
const KEPT = 10_000;
