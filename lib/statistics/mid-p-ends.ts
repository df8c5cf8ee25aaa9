import binomialCdf from "@stdlib/stats-base-dists-binomial-cdf";
import { bisect } from "@/lib/statistics/bisection";
import type { Ends } from "@/lib/statistics/interval";

/**
 * The ends of the mid-P interval: each leaves `tail` when half the probability of the count seen
 * is taken (Lancaster 1961, JASA 56:223). Exactly 0 at no events and 1 at nothing but events.
 * @param events whole, from 0 to `units`
 * @param units whole, over 0
 * @param tail probability left in each tail, over 0 and under 0.5
 */
export function midPEnds(events: number, units: number, tail: number): Ends {
  return {
    lower: lowerEnd(events, units, tail),
    // Without events half of (1 − p)^n is left, which has a closed form that keeps every digit.
    upper:
      events === 0
        ? -Math.expm1(Math.log(2 * tail) / units)
        : 1 - lowerEnd(units - events, units, tail),
  };
}

function lowerEnd(events: number, units: number, tail: number): number {
  if (events === units) return Math.exp(Math.log(2 * tail) / units);
  return bisect((proportion) => upperTailMidP(events, units, proportion) > tail, 0, 1);
}

function upperTailMidP(events: number, units: number, proportion: number): number {
  const below = binomialCdf(events - 1, units, proportion);
  const upTo = binomialCdf(events, units, proportion);
  return 1 - (below + upTo) / 2;
}
