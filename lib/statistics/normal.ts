import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/**
 * The standard normal quantile that leaves (1 − level)/2 in each tail: 1.959964 at 0.95.
 * Taken from the lower tail, which keeps its digits at levels close to 1.
 */
export function twoSidedNormalQuantile(level: number): number {
  return -normalQuantile((1 - level) / 2, 0, 1);
}
