import { pool } from "../database";
import type { Pair, Target } from "./compared-with";
import type { Asked } from "./counted";
import { type Order, type OrderRow, orderOf } from "./medians";
import { beside, parameters } from "./others-sql";
import { isContinuous } from "./unit-sql";
import { orderStatistics, spreadAroundMedian } from "./woodruff-sql";

type Standing = Target & { measure: string; n: number; clusters: number | null };

const keys = "worker, period, measure";

/** Median, quartiles and the ends of both intervals, of the comparisons that stand; by worker, period and measure. */
export async function othersOrders(
  asked: Pick<Asked, "measures" | "periods" | "ends">,
  pairs: readonly Pair[],
  standing: readonly Standing[],
): Promise<Map<string, Order>> {
  if (standing.length === 0) return new Map();
  const ranks = standing.map(({ n }) => asked.ends.ranks(n));
  const { rows } = await pool().query<OrderRow & Target & { measure: string }>(
    `${beside(asked.measures.filter(isContinuous))}, wanted as (
      select * from unnest($11::text[], $12::int[], $13::text[], $14::int[], $15::int[], $16::float8[]) as w(${keys}, low, high, reach)
    ), recorded as materialized (
      select ${keys}, cluster, value from wanted join beside using (${keys}) cross join lateral unnest(values) as value
    ), ${spreadAroundMedian(keys, "recorded")}
    select ${keys}, ${orderStatistics} from wanted r join sorted s using (${keys}) left join spread e using (${keys})`,
    [
      ...parameters(asked.periods, pairs),
      standing.map((row) => row.worker),
      standing.map((row) => row.period),
      standing.map((row) => row.measure),
      ranks.map((one) => one?.lower ?? null),
      ranks.map((one) => one?.upper ?? null),
      standing.map((row) => asked.ends.reach(row.clusters ?? 0) ?? null),
    ],
  );
  return new Map(rows.map((row) => [`${row.worker}\n${row.period}\n${row.measure}`, orderOf(row)]));
}
