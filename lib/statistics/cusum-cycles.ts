import { cusumWeight } from "@/lib/statistics/cusum-weight";
import { seededRandom } from "@/lib/statistics/seeded-random";

/** A canal for the simulation of a CUSUM: what happened and what was expected of it. */
export type CusumCanal = { outcome: 0 | 1; baseline: number };

/**
 * Of a long CUSUM, cut into cycles that begin at 0 with a visit and end at 0 after one or at the
 * cap: each new height that a cycle reached, rising within the cycle, with how many canals of the
 * cycle came after it.
 */
export type CusumCycles = {
  /** canals in all whole cycles */
  simulated: number;
  /** the cycle that each height belongs to */
  cycle: number[];
  height: number[];
  /** canals of the cycle after the one that reached the height */
  after: number[];
};

/**
 * Draws whole visits with replacement, outcomes as they were, until `canals` canals are through and
 * the cycle under way has ended. Limits up to the cap can be judged from what is found.
 *
 * Heights are kept in single precision, which makes one of sums that differ by rounding only.
 * @param visits with at least one canal each
 * @param cap the height at which a cycle is ended, the rest of its visit left out; over 0
 */
export function cusumCycles(
  visits: readonly (readonly CusumCanal[])[],
  oddsRatio: number,
  seed: number,
  canals: number,
  cap: number,
): CusumCycles {
  const weighed = visits.map((visit) => weighedVisit(visit, oddsRatio));
  const random = seededRandom(seed);
  const cycle: number[] = [];
  const height: number[] = [];
  const after: number[] = [];
  let sum = 0;
  let through = 0;
  let begun = through;
  let first = height.length;
  let highest = Number.NEGATIVE_INFINITY;
  while (through < canals || sum > 0) {
    const visit = weighed[Math.floor(random() * weighed.length)] as WeighedVisit;
    if (visit.eventless) {
      // Falls all the way: the whole visit is one step, which most of the stream is made of.
      sum = Math.max(0, sum + visit.total);
      through += visit.canals.length;
    } else {
      for (const { weight, event } of visit.canals) {
        through += 1;
        sum = Math.max(0, sum + weight);
        const reached = Math.fround(sum);
        // Only an event can raise the sum; the first of a cycle always does.
        if (event && reached > highest) {
          highest = reached;
          cycle.push(begun);
          height.push(reached);
          after.push(through);
        }
        if (reached < cap) continue;
        sum = 0;
        break;
      }
    }
    if (sum > 0) continue;
    for (let i = first; i < after.length; i += 1) after[i] = through - (after[i] as number);
    first = height.length;
    highest = Number.NEGATIVE_INFINITY;
    begun = through;
  }
  return { simulated: through, cycle, height, after };
}

type WeighedVisit = {
  canals: { weight: number; event: boolean }[];
  total: number;
  eventless: boolean;
};

function weighedVisit(visit: readonly CusumCanal[], oddsRatio: number): WeighedVisit {
  const canals = visit.map(({ outcome, baseline }) => ({
    weight: cusumWeight(outcome, baseline, oddsRatio),
    event: outcome === 1,
  }));
  const total = canals.reduce((all, { weight }) => all + weight, 0);
  return { canals, total, eventless: !canals.some(({ event }) => event) };
}
