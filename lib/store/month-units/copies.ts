import type pg from "pg";
import { byVisit, gatheredSql } from "../figures/criterion/gathered-sql";
import type { Tables } from "../figures/criterion/tables";
import { copiedNumbers, numberedOf } from "./alike-sql";
import { nextMonth } from "./months-of";

/** Columns that the facts have as their canal or visit has them, and those that copies of the facts have from it beside. */
const ofCanal = {
  facts: ["preparation", "timer_reset", "working_length_mm", "length_method", "curvature_deg"],
  beside: ["apex", "apical_size", "preparation_s", "filled", "fragment_on_arrival"],
};
const ofVisit = {
  facts: ["practice", "patient", "local_day", "treatment"],
  beside: ["session_id", "outcome", "pulp", "difficulty", "tooth"],
};
const from = (alias: string, names: readonly string[]) =>
  names.map((name) => `${alias}.${name}`).join(", ");
const all = ({ facts, beside }: typeof ofCanal) => from("u", [...facts, ...beside]);

/** What the records of the months made together are copied to, until the transaction ends; facts together with what they are of. */
const copies: Tables = {
  canalFacts: "copied_canal_facts",
  visitFacts: "copied_visit_facts",
  steps: "copied_steps",
  irrigation: "deliveries",
  instruments: "uses",
  canals: "copied_canals",
  sessions: "treated",
  canal: `cross join lateral (select u.visit_id, u.canal, ${all(ofCanal)}) c`,
  visit: `cross join lateral (select u.visit_id as id, ${all(ofVisit)}) v`,
};

const visits = `select visit_id from ${copies.visitFacts}`;
const within =
  "practice = any($1::text[]) and date_trunc('month', local_day)::date = any($2::date[]) and local_day >= $3::date and local_day < $4::date";
const ofCanals = `with asked as (select * from ${copies.canalFacts})`;

const made: readonly (readonly [name: string, sql: string])[] = [
  ["visits_asked", `select * from visit_facts where ${within}`],
  ["treated", byVisit("sessions", "select visit_id from visits_asked", "id")],
  [copies.canals, byVisit("canals", "select visit_id from visits_asked")],
  [
    copies.visitFacts,
    `select u.*, ${from("v", ["session_id", "pulp", "difficulty", "tooth"])} from visits_asked u join treated v on v.id = u.visit_id`,
  ],
  [
    copies.canalFacts,
    `select u.*, ${from("c", ofCanal.beside)}, ${from("v", ["session_id", "outcome", "pulp", "difficulty"])}
     from (select * from canal_facts where ${within}) u join copied_canals c on c.visit_id = u.visit_id and c.canal = u.canal join treated v on v.id = u.visit_id`,
  ],
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
 * records, which lie far apart among all of theirs.
 */
export async function copied(
  client: pg.ClientBase,
  practices: readonly string[],
  months: readonly string[],
  criteria: number,
): Promise<Tables | undefined> {
  const [first, last] = [months[0], months.at(-1)];
  if (criteria < many || first === undefined || last === undefined) return undefined;
  // What the planner is to know of the copies is known from few rows.
  await client.query("set local default_statistics_target = 10; set local enable_memoize = off");
  await client.query(
    "select set_config('temp_buffers', '96MB', false) where pg_my_temp_schema() = 0",
  );
  for (const [name, sql] of made) {
    const values = sql.includes("$1") ? [practices, months, first, nextMonth(last)] : [];
    await client.query(`create temp table ${name} on commit drop as ${sql}`, values);
    await client.query(`analyze ${name}`);
  }
  return copies;
}

/** Takes them away again, so that those of other months can be made in the same transaction. */
export async function dropCopies(client: pg.ClientBase): Promise<void> {
  await client.query(
    `drop table ${made.map(([name]) => name).join(", ")}; reset default_statistics_target; reset enable_memoize`,
  );
}
