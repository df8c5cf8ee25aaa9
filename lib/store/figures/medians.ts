import type { ClusteredMedian, MedianTally } from "@/lib/measures/tally";
import { pool } from "../database";
import type { Asked, CountRow } from "./counted";
import type { Scope } from "./scope";
import { isContinuous, unitSql } from "./unit-sql";
import { orderStatistics, spreadAroundMedian } from "./woodruff-sql";

export type Order = Pick<MedianTally, "median" | "quartiles" | "bounds" | "clustered">;

/** A row of order statistics as `woodruff-sql` gives them. */
export type OrderRow = {
  quartiles: [number, number, number];
  lower: number | null;
  upper: number | null;
  clusters: number | null;
  clusteredLower: number | null;
  clusteredUpper: number | null;
  designEffect: number | null;
};

const keys = "measure, period, kind, key";

/**
 * Median and quartiles (type 7, PostgreSQL's percentile_cont), the two order statistics that bound the median's
 * interval and the ends that honour the patient, for every group of counts with values; by the group's place.
 */
export async function medians(
  scope: Scope,
  asked: Asked,
  groups: readonly CountRow[][],
): Promise<Map<number, Order>> {
  const measures = asked.measures.filter(isContinuous);
  const wanted = groups.flatMap((rows, place) => {
    const [first] = rows;
    const n = rows.reduce((total, row) => total + row.n, 0);
    if (!first || n === 0 || !isContinuous(first.measure)) return [];
    const ranks = asked.ends.ranks(n);
    const reach = asked.ends.reach(first.clusters ?? 0);
    return [{ first, place, low: ranks?.lower, high: ranks?.upper, reach }];
  });
  if (wanted.length === 0) return new Map();
  const { rows } = await pool().query<OrderRow & { place: number }>(
    `${scope.withUnits(unitSql(measures, asked))}, wanted as (
      select * from unnest($9::text[], $10::int[], $11::text[], $12::text[], $13::int[], $14::int[], $15::int[], $16::float8[])
        as r(${keys}, place, low, high, reach)
    ), recorded as materialized (
      select ${keys}, value, cluster from subjects where excluded is null and value is not null
    ), ${spreadAroundMedian(keys, "recorded")}
    select r.place, ${orderStatistics} from wanted r join sorted s using (${keys}) left join spread e using (${keys})`,
    [
      ...scope.parameters(asked.periods),
      wanted.map(({ first }) => first.measure),
      wanted.map(({ first }) => first.period),
      wanted.map(({ first }) => first.kind),
      wanted.map(({ first }) => first.key),
      wanted.map(({ place }) => place),
      wanted.map(({ low }) => low ?? null),
      wanted.map(({ high }) => high ?? null),
      wanted.map(({ reach }) => reach ?? null),
    ],
  );
  return new Map(rows.map((row) => [row.place, orderOf(row)]));
}

/** Order statistics with the ends of both intervals, where they exist. */
export function orderOf(row: OrderRow): Order {
  const [q1, median, q3] = row.quartiles;
  const { lower, upper } = row;
  const bounds = lower === null || upper === null ? null : ([lower, upper] as const);
  return { median, quartiles: [q1, q3], bounds, clustered: clusteredOf(row) };
}

function clusteredOf(row: OrderRow): ClusteredMedian | null {
  const { clusters, clusteredLower: lower, clusteredUpper: upper, designEffect } = row;
  if (lower === null || upper === null || clusters === null || designEffect === null) return null;
  return { lower, upper, designEffect, clusters };
}
