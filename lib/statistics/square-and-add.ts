import type { Ends } from "@/lib/statistics/interval";

/** An estimate with the ends of its own interval. */
export type EstimateWithEnds = Ends & { estimate: number };

/**
 * The ends for the difference first − second of two independent estimates, by squaring and adding
 * the distances of each to its own ends (Newcombe 1998, Stat Med 17:873, method 10; Zou & Donner
 * 2008, Stat Med 27:1693, for any estimate, so that clustered ends may stand here).
 */
export function squareAndAdd(first: EstimateWithEnds, second: EstimateWithEnds): Ends {
  const difference = first.estimate - second.estimate;
  return {
    lower: difference - Math.hypot(first.estimate - first.lower, second.upper - second.estimate),
    upper: difference + Math.hypot(first.upper - first.estimate, second.estimate - second.lower),
  };
}
