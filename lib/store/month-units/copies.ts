import type pg from "pg";
import { byVisit, gatheredSql } from "../figures/criterion/gathered-sql";
import type { Tables } from "../figures/criterion/tables";
import { copiedNumbers, numberedOf } from "./alike-sql";
import { nextMonth } from "./months-of";

/** What the records of the months made together are copied to, until the transaction ends. */
const copies: Tables = {
  canalFacts: "copied_canal_facts",
  visitFacts: "copied_visit_facts",
  canals: "copied_canals",
  sessions: "copied_sessions",
  steps: "copied_steps",
  irrigation: "deliveries",
  instruments: "uses",
};

const visits = `select visit_id from ${copies.visitFacts}`;
const within =
  "practice = any($1::text[]) and date_trunc('month', local_day)::date = any($2::date[]) and local_day >= $3::date and local_day < $4::date";
const ofCanals = `with asked as (select * from ${copies.canalFacts})`;

const made: readonly (readonly [name: string, sql: string])[] = [
  [copies.visitFacts, `select * from visit_facts where ${within}`],
  [copies.canalFacts, `select * from canal_facts where ${within}`],
  [copies.sessions, byVisit("sessions", visits, "id")],
  [copies.canals, byVisit("canals", visits)],
  [copies.steps, byVisit("steps", visits)],
  ["uses", byVisit("instruments", visits)],
  ["course", `${ofCanals} ${gatheredSql("course", true)}`],
  ["deliveries", byVisit("irrigation", `${visits} union select id from course`)],
  [copiedNumbers, numberedOf(copies.visitFacts, "true")],
];

/** From so many criteria on copies are worth what it takes to make them. */
const many = 4;

/**
 * Copies what criteria look at in the months of practices, where many criteria are to be judged there: together they look at the same
 * records, which lie far apart among all of theirs. What the transaction copied before of the same and other months is used again.
 */
export async function copiesOf(
  client: pg.ClientBase,
  practices: readonly string[],
  months: readonly string[],
  criteria: number,
): Promise<Tables | undefined> {
  const { rows } = await client.query<{ there: boolean }>(
    `select to_regclass('pg_temp.${copies.visitFacts}') is not null as there`,
  );
  if (rows[0]?.there) return copies;
  const [first, last] = [months[0], months.at(-1)];
  if (criteria < many || first === undefined || last === undefined) return undefined;
  // What the planner is to know of the copies is known from few rows.
  await client.query("set local default_statistics_target = 10");
  for (const [name, sql] of made) {
    const values = sql.includes("$1") ? [practices, months, first, nextMonth(last)] : [];
    await client.query(`create temp table ${name} on commit drop as ${sql}`, values);
    await client.query(`analyze ${name}`);
  }
  return copies;
}
