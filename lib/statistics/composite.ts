import { type ClusterSums, clusterSums } from "@/lib/statistics/cluster-sums";
import { clusteredProportionOf } from "@/lib/statistics/clustered-proportion";
import type { Interval } from "@/lib/statistics/interval";
import { wilson } from "@/lib/statistics/proportion-interval";

/** One eligible unit of a criterion at a visit, and whether it was met. */
export type CompositeUnit = { readonly criterion: string; readonly met: boolean };

/** A share of opportunities or of visits, with its interval. */
export type Composite = {
  met: number;
  of: number;
  estimate: number;
  interval: Interval | undefined;
};

/**
 * The share of opportunities taken (Nolan & Berwick 2006, JAMA 295:1168): each criterion with eligible units is one
 * opportunity at a visit, taken when all its units are met, so that a visit of many canals weighs no more. The interval
 * honours the visit as cluster (see `clusteredProportion`).
 * @param visits the eligible units of each, in any order
 * @param level such as 0.95
 * @returns undefined where no visit has an eligible unit
 * @throws RangeError for a level that cannot be
 */
export function opportunityScore(
  visits: readonly (readonly CompositeUnit[])[],
  level: number,
): Composite | undefined {
  const clusters = visits.map((visit) => {
    const taken = opportunities(visit);
    return { events: taken.filter((met) => met).length, units: taken.length };
  });
  return opportunityScoreOf(clusterSums(clusters), level);
}

/**
 * The same from sums over the visits with an opportunity, of which the events are the opportunities taken.
 * @throws RangeError for sums that no visits can have, or a level that cannot be
 */
export function opportunityScoreOf(visits: ClusterSums, level: number): Composite | undefined {
  const found = clusteredProportionOf(visits, level);
  if (!found) return undefined;
  const { events: met, units: of } = visits;
  return { met, of, estimate: found.estimate, interval: found.interval };
}

/**
 * The share of visits at which every opportunity was taken (Nolan & Berwick 2006), with Wilson's interval. A visit without
 * an eligible unit is left out.
 * @param visits the eligible units of each, in any order
 * @param level such as 0.95
 * @returns undefined where no visit has an eligible unit
 * @throws RangeError for a level that cannot be
 */
export function allOrNone(
  visits: readonly (readonly CompositeUnit[])[],
  level: number,
): Composite | undefined {
  const eligible = visits.filter((visit) => visit.length >= 1);
  const met = eligible.filter((visit) => visit.every((unit) => unit.met)).length;
  return allOrNoneOf(met, eligible.length, level);
}

/**
 * The same from counts of visits with an opportunity.
 * @throws RangeError for counts or a level that cannot be
 */
export function allOrNoneOf(met: number, of: number, level: number): Composite | undefined {
  const interval = wilson(met, of, level);
  return interval && { met, of, estimate: met / of, interval };
}

/** Whether each criterion of a visit was met by all its units. */
function opportunities(visit: readonly CompositeUnit[]): boolean[] {
  const met = new Map<string, boolean>();
  for (const unit of visit) met.set(unit.criterion, (met.get(unit.criterion) ?? true) && unit.met);
  return [...met.values()];
}
