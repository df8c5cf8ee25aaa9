import type { ClusterCounts } from "@/lib/measures/tally";

/** What a row of cluster sums holds; all null where no unit sits in a patient. */
export type ClusterRow = {
  clusters: number | null;
  events: number | null;
  clusteredUnits: number | null;
  eventsSquared: number | null;
  eventsByUnits: number | null;
  unitsSquared: number | null;
};

/**
 * SQL: the sums over clusters, from a relation with a row a cluster that holds its events `e` and units `u`. Squares of
 * counts are whole, so doubles hold them exactly.
 */
export const clusterSums = `count(*)::int as clusters, sum(e)::float8 as events, sum(u)::float8 as "clusteredUnits",
  sum(e * e)::float8 as "eventsSquared", sum(e * u)::float8 as "eventsByUnits", sum(u * u)::float8 as "unitsSquared"`;

/** SQL: the columns of cluster sums where units sit in no patient. */
export const noClusterSums = `null::int as clusters, null::float8 as events, null::float8 as "clusteredUnits",
  null::float8 as "eventsSquared", null::float8 as "eventsByUnits", null::float8 as "unitsSquared"`;

/** The sums of a row, where there are any. */
export function clustersOf(row: ClusterRow): ClusterCounts | null {
  const { clusters, events, clusteredUnits: units } = row;
  const { eventsSquared, eventsByUnits, unitsSquared } = row;
  if (clusters === null || events === null || units === null) return null;
  if (eventsSquared === null || eventsByUnits === null || unitsSquared === null) return null;
  return { clusters, events, units, eventsSquared, eventsByUnits, unitsSquared };
}
