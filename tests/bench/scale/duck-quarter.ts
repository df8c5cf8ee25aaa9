import { DuckDBInstance } from "@duckdb/node-api";
import type { FiguresReach } from "@/lib/access/reach";
import { monthsUpTo, type Period } from "@/lib/records/period";
import { pool } from "@/lib/store/database";
import { isContinuous } from "@/lib/store/figures/unit-sql";
import { readMonths } from "@/lib/store/month-units/read-months";

/**
 * The same counts and medians by DuckDB in memory with two threads, from tables of its own: the facts of every canal and visit of the
 * five years, and each unit of the quarter as it was judged. Milliseconds, the middle of five runs after one.
 */
export async function duckQuarter(
  reach: FiguresReach,
  period: Period,
  measures: readonly string[],
): Promise<{ duck: number; duckRows: number }> {
  const instance = await DuckDBInstance.create(":memory:", { threads: "2" });
  const duck = await instance.connect();
  await facts(duck, "canal_facts", [
    "flow_s",
    "hypochlorite_s",
    "dwell_s",
    "activation_s",
    "volume_ml",
    "hypochlorite_ml",
  ]);
  await facts(duck, "visit_facts", ["volume_ml"]);
  await units(
    duck,
    reach,
    period,
    measures.filter((id) => !isContinuous(id)),
  );
  const taken: number[] = [];
  let duckRows = 0;
  for (let time = 0; time < 6; time += 1) {
    const started = performance.now();
    duckRows = 0;
    for (const sql of asked(period))
      duckRows += (await (await duck.runAndReadAll(sql)).getRows()).length;
    if (time > 0) taken.push(performance.now() - started);
  }
  return { duck: taken.sort((a, b) => a - b)[2] ?? Number.NaN, duckRows };
}

type Connection = Awaited<ReturnType<DuckDBInstance["connect"]>>;

/** Counts of each measure, and medians with quartiles of each value, by clinician and of all. */
function asked({ from, until }: Period): string[] {
  const within = `local_day >= '${from}' and local_day < '${until}'`;
  const quartiles = (columns: readonly string[]) =>
    columns.map((one) => `quantile_cont(${one}, [0.25, 0.5, 0.75]), count(${one})`).join(", ");
  return [
    `select worker, ${quartiles(["flow_s", "hypochlorite_s", "dwell_s", "activation_s", "volume_ml", "hypochlorite_ml"])}
     from canal_facts where ${within} and exclusion is null group by grouping sets ((worker), ())`,
    `select worker, ${quartiles(["volume_ml"])} from visit_facts where ${within} and exclusion is null group by grouping sets ((worker), ())`,
    `select worker, exclusion, count(*) from canal_facts where ${within} group by grouping sets ((worker, exclusion), (exclusion))`,
    `select measure, worker, excluded, excepted, sum(units), sum(numerator), sum(denominator), sum(missing)
     from units group by grouping sets ((measure, worker, excluded, excepted), (measure, excluded, excepted))`,
  ];
}

async function facts(duck: Connection, table: string, columns: readonly string[]): Promise<void> {
  await duck.run(
    `create table ${table} (worker varchar, local_day date, exclusion varchar, ${columns.map((one) => `${one} double`).join(", ")})`,
  );
  const into = await duck.createAppender(table);
  const client = await pool().connect();
  try {
    await client.query("begin");
    await client.query(
      `declare rows no scroll cursor for select worker, (local_day - '1970-01-01'::date) as day, exclusion, ${columns.join(", ")} from ${table}`,
    );
    for (;;) {
      const { rows } = await client.query({ text: "fetch 50000 from rows", rowMode: "array" });
      if (rows.length === 0) break;
      for (const [worker, day, exclusion, ...values] of rows) {
        into.appendVarchar(worker);
        into.appendDate({ days: day } as never);
        if (exclusion === null) into.appendNull();
        else into.appendVarchar(exclusion);
        for (const value of values)
          if (value === null) into.appendNull();
          else into.appendDouble(value);
        into.endRow();
      }
    }
    await client.query("commit");
  } finally {
    client.release();
  }
  into.closeSync();
}

async function units(
  duck: Connection,
  reach: FiguresReach,
  period: Period,
  measures: readonly string[],
): Promise<void> {
  await duck.run(
    "create table units (measure varchar, worker varchar, excluded varchar, excepted varchar, units integer, numerator integer, denominator integer, missing integer)",
  );
  const into = await duck.createAppender("units");
  const text = (value: string | null) =>
    value === null ? into.appendNull() : into.appendVarchar(value);
  const months = monthsUpTo(period.until, 3).map(({ from }) => from);
  for (const { units } of await readMonths(reach.practices, months, measures))
    for (const [measure, all] of units)
      for (const one of all)
        for (const _ of one.visits) {
          text(measure);
          text(one.worker);
          text(one.excluded);
          text(one.excepted);
          for (const value of [one.units, one.numerator ?? 0, one.denominator ?? 0, one.missing])
            into.appendInteger(value);
          into.endRow();
        }
  into.closeSync();
}
