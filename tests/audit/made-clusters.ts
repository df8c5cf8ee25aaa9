import type { RateTally } from "@/lib/measures/tally";
import { type Cluster, clusterSums } from "@/lib/statistics/cluster-sums";

/** The counts of a rate whose patients are written out, one entry a patient. */
export function countsOf(
  patients: readonly Cluster[],
): Pick<RateTally, "numerator" | "denominator" | "notMet" | "population" | "clusters"> {
  const clusters = clusterSums(patients);
  const { events: numerator, units: denominator } = clusters;
  return {
    numerator,
    denominator,
    notMet: denominator - numerator,
    population: denominator,
    clusters,
  };
}

/** So many patients that are alike. */
export function alike(patients: number, events: number, units: number): Cluster[] {
  return Array.from({ length: patients }, () => ({ events, units }));
}
