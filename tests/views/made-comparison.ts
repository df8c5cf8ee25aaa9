import { type Comparison, comparisonWithOthers } from "@/lib/audit/comparison";
import type { ClusteredMedian, RateTally } from "@/lib/measures/tally";
import { clusterSums } from "@/lib/statistics/cluster-sums";
import { rateFigure } from "./made-figure";

/** So many patients with so many events among so many units each. */
export type Patients = readonly (readonly [patients: number, events: number, units: number])[];

/** A rate's figure made of patients. */
export function rateOf(patients: Patients, given: Partial<RateTally> = {}) {
  const clusters = sumsOf(patients);
  const { events, units } = clusters;
  return rateFigure({
    population: units,
    numerator: events,
    denominator: units,
    notMet: units - events,
    clusters,
    ...given,
  });
}

/** The practice's others' rate made of patients. */
export function othersRate(measure: string, patients: Patients): Comparison {
  const clusters = sumsOf(patients);
  return comparisonWithOthers("practice", "the practice's others", {
    measure,
    n: clusters.units,
    numerator: clusters.events,
    clusters,
    median: null,
    quartiles: null,
    bounds: null,
    clustered: null,
  });
}

/** The practice's others' median of 40 units with its ends. */
export function othersMedian(median: number, clustered: ClusteredMedian | null): Comparison {
  return comparisonWithOthers("practice", "the practice's others", {
    measure: "volume",
    n: 40,
    numerator: null,
    clusters: null,
    median,
    quartiles: [median - 4, median + 4],
    bounds: [median - 1, median + 1],
    clustered,
  });
}

function sumsOf(patients: Patients) {
  return clusterSums(
    patients.flatMap(([times, events, units]) =>
      Array.from({ length: times }, () => ({ events, units })),
    ),
  );
}
