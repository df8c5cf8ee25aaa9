import type { MedianTally } from "@/lib/measures/tally";
import { pool } from "../database";
import type { Asked, CountRow } from "./counted";
import type { Scope } from "./scope";
import { isContinuous, unitSql } from "./unit-sql";

export type Order = Pick<MedianTally, "median" | "quartiles" | "bounds">;
type Row = {
  key: string;
  quartiles: [number, number, number];
  lower: number | null;
  upper: number | null;
};

/**
 * Median and quartiles (type 7, PostgreSQL's percentile_cont) and the two order statistics that bound the median's
 * interval, for every group of counts with values.
 */
export async function medians(
  scope: Scope,
  asked: Asked,
  groups: readonly CountRow[][],
): Promise<Map<string, Order>> {
  const measures = asked.measures.filter(isContinuous);
  const wanted = groups.flatMap((rows) => {
    const [first] = rows;
    const n = rows.reduce((total, row) => total + row.n, 0);
    if (!first || n === 0 || !isContinuous(first.measure)) return [];
    const ranks = asked.ranks(n);
    const key = [first.measure, first.period, first.kind, first.key].join("\n");
    return [{ first, key, lower: ranks?.lower ?? null, upper: ranks?.upper ?? null }];
  });
  if (wanted.length === 0) return new Map();
  const { rows } = await pool().query<Row>(
    `${scope.withUnits(unitSql(measures, asked.strata))}, ranks as (
      select * from unnest($9::text[], $10::int[], $11::text[], $12::text[], $13::text[], $14::int[], $15::int[])
        as r(measure, period, kind, subject, key, low, high)
    ), sorted as (
      select measure, period, kind, key, percentile_cont(array[0.25, 0.5, 0.75]) within group (order by value) as quartiles,
        array_agg(value order by value) as values
      from subjects where excluded is null and value is not null group by measure, period, kind, key
    )
    select r.key, s.quartiles, s.values[r.low] as lower, s.values[r.high] as upper
    from sorted s join ranks r on r.measure = s.measure and r.period = s.period and r.kind = s.kind and r.subject = s.key`,
    [...scope.parameters(asked.periods), ...columns(wanted)],
  );
  return new Map(rows.map((row) => [row.key, orderOf(row)]));
}

function columns(
  wanted: readonly { first: CountRow; key: string; lower: number | null; upper: number | null }[],
): unknown[] {
  const firsts = wanted.map((one) => one.first);
  return [
    firsts.map((first) => first.measure),
    firsts.map((first) => first.period),
    firsts.map((first) => first.kind),
    firsts.map((first) => first.key),
    wanted.map((one) => one.key),
    wanted.map((one) => one.lower),
    wanted.map((one) => one.upper),
  ];
}

function orderOf(row: Row): Order {
  const [q1, median, q3] = row.quartiles;
  const bounds =
    row.lower === null || row.upper === null ? null : ([row.lower, row.upper] as const);
  return { median, quartiles: [q1, q3], bounds };
}
