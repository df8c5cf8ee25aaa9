import { requireCount, requireEventsAmong } from "@/lib/statistics/count-and-level";

/** The events and units of one cluster: of one patient, or else of one visit. */
export type Cluster = { readonly events: number; readonly units: number };

/** All that a clustered proportion rests on, summed over the clusters with at least one unit. */
export type ClusterSums = {
  /** K, the clusters with at least one unit */
  readonly clusters: number;
  /** Σe */
  readonly events: number;
  /** Σn */
  readonly units: number;
  /** Σe² */
  readonly eventsSquared: number;
  /** Σe·n */
  readonly eventsByUnits: number;
  /** Σn² */
  readonly unitsSquared: number;
};

/**
 * The sums over clusters; one without units is not counted, and no clusters give zeros.
 * @param clusters in any order, left as they are
 * @throws RangeError for counts that cannot be
 */
export function clusterSums(clusters: readonly Cluster[]): ClusterSums {
  for (const { events, units } of clusters) requireEventsAmong(events, units);
  const counted = clusters.filter(({ units }) => units >= 1);
  const sum = (of: (cluster: Cluster) => number) =>
    counted.reduce((all, cluster) => all + of(cluster), 0);
  return {
    clusters: counted.length,
    events: sum(({ events }) => events),
    units: sum(({ units }) => units),
    eventsSquared: sum(({ events }) => events * events),
    eventsByUnits: sum(({ events, units }) => events * units),
    unitsSquared: sum(({ units }) => units * units),
  };
}

/**
 * v = K/(K − 1)·Σ(e − p·n)²/(Σn)² with p = Σe/Σn, the variance of a proportion whose units sit in
 * clusters (Rao & Scott 1992, Biometrics 48:577), from the sums alone.
 *
 * With the square multiplied out, Σ(e − p·n)² = [(Σn·Σe² − Σe·Σen) − p·(Σn·Σen − Σe·Σn²)]/Σn. Both
 * brackets are whole numbers, so clusters of one and the same rate give exactly 0.
 * @returns undefined under two clusters; never below 0 by rounding
 * @throws RangeError for sums that no clusters can have
 */
export function clusterVariance(sums: ClusterSums): number | undefined {
  requireSums(sums);
  const { clusters, events, units, eventsSquared, eventsByUnits, unitsSquared } = sums;
  if (clusters < 2) return undefined;
  const ofEvents = units * eventsSquared - events * eventsByUnits;
  const ofUnits = units * eventsByUnits - events * unitsSquared;
  const squares = Math.max(0, ofEvents - (events / units) * ofUnits) / units;
  return ((clusters / (clusters - 1)) * squares) / (units * units);
}

// Within a cluster 0 ≤ e ≤ n and n ≥ 1, so the sums come in this order.
function requireSums(sums: ClusterSums): void {
  const { clusters, events, units, eventsSquared, eventsByUnits, unitsSquared } = sums;
  requireEventsAmong(events, units);
  for (const count of [clusters, eventsSquared, eventsByUnits, unitsSquared]) {
    requireCount(count, "sum over clusters");
  }
  const rising = [events, eventsSquared, eventsByUnits, unitsSquared];
  const ordered = rising.every((sum, place) => place === 0 || sum >= (rising[place - 1] as number));
  if (!ordered || clusters > units || units > unitsSquared || clusters >= 1 !== units >= 1) {
    throw new RangeError(`no clusters have these sums: ${JSON.stringify(sums)}`);
  }
}
