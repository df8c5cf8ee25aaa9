import { type ClusterSums, clusterSums } from "@/lib/statistics/cluster-sums";
import { clusteredProportionOf } from "@/lib/statistics/clustered-proportion";
import { type Flag, flags } from "@/lib/statistics/flags";
import type { Patient } from "./beta-binomial-patients";

/**
 * Patients in the quarter of each of 20 clinicians: 60 to 250 in steps of ten, so that the busiest has about four times
 * the canals of the quietest. Every patient has one clinician.
 */
export const volumes: readonly number[] = Array.from({ length: 20 }, (_, place) => 60 + 10 * place);

const LEVEL = 0.95;

/**
 * One page of a rate with every clinician on it, flagged as the pages do: against the pooled rate of all, counts divided
 * by the design effect of the whole with patients as clusters.
 * @param draw a patient of the clinician in that place
 * @returns the clinicians' flags in order
 */
export function flagPage(draw: (place: number) => Patient): Flag[] {
  const sums = volumes.map((patients, place) =>
    clusterSums(Array.from({ length: patients }, () => draw(place))),
  );
  const whole = sums.reduce(together);
  const theta = whole.events / whole.units;
  const designEffect = clusteredProportionOf(whole, LEVEL)?.designEffect ?? 1;
  const { figures } = flags(
    sums.map(({ events, units }) => ({ events, units, theta, designEffect })),
  );
  return figures.filter((flag) => flag !== null);
}

function together(one: ClusterSums, other: ClusterSums): ClusterSums {
  return {
    clusters: one.clusters + other.clusters,
    events: one.events + other.events,
    units: one.units + other.units,
    eventsSquared: one.eventsSquared + other.eventsSquared,
    eventsByUnits: one.eventsByUnits + other.eventsByUnits,
    unitsSquared: one.unitsSquared + other.unitsSquared,
  };
}
