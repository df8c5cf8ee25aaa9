import type pg from "pg";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { holdAccepted } from "../import/hold-accepted";
import { waitingReasons } from "../import/relation-reasons";
import { storedColumns } from "../import/stored-columns";
import { UndoRefused } from "../import/take-back";

/**
 * Rows that stay but hang on one that goes (temporary table `going`) wait for it again, as they would have if it had never been there.
 *
 * @throws UndoRefused where a correction rests on one of them
 */
export async function holdOrphans(client: pg.ClientBase): Promise<void> {
  await client.query(`
    create temp table gone_visits on commit drop as select id as visit_id from going where table_name = 'sessions'`);
  await client.query(`
    create temp table gone_canals on commit drop as
    select c.visit_id, c.canal from going g join canals c on c.id = g.id where g.table_name = 'canals'`);
  await client.query(`
    create temp table gone_uses on commit drop as
    select u.visit_id, u.canal, u.seq from going g join instruments u on u.id = g.id where g.table_name = 'instruments'`);
  for (const table of tableNames) {
    if (!tables[table].parent) continue;
    await findOrphans(client, table);
    await refuseCorrectedOrphans(client, table);
    if (table === "canals")
      await client.query("insert into gone_canals select visit, canal from orphans");
    if (table === "instruments")
      await client.query("insert into gone_uses select visit, canal, seq from orphans");
    await holdAccepted(client, "orphans", {
      table,
      kind: "waiting",
      digest: table,
      reasons: waitingReasons(table).replaceAll("j.visit_id is null", "j.visit_gone"),
      beside: ["visit", "visit_gone"],
    });
    await client.query("drop table orphans");
  }
}

async function findOrphans(client: pg.ClientBase, table: TableName) {
  const hasCanal = table !== "canals" && storedColumns(table).some(({ name }) => name === "canal");
  const canal = hasCanal
    ? "or exists (select from gone_canals g where g.visit_id = t.visit_id and g.canal = t.canal)"
    : "";
  const use =
    tables[table].parent === "instruments"
      ? "or exists (select from gone_uses g where g.visit_id = t.visit_id and g.canal = t.canal and g.seq = t.seq)"
      : "";
  const practiceBit = 2 ** tables[table].columns.findIndex((column) => column.name === "practice");
  await client.query(`
    create temp table orphans as
    select t.*, t.visit_id as visit, case when t.fields & ${practiceBit} <> 0 then v.practice end as practice, v.session_id, null::jsonb as match,
      t.visit_id in (select visit_id from gone_visits) as visit_gone
    from "${table}" t join sessions v on v.id = t.visit_id
    where not exists (select from going g where g.table_name = '${table}' and g.id = t.id)
      and (t.visit_id in (select visit_id from gone_visits) ${canal} ${use})`);
}

async function refuseCorrectedOrphans(client: pg.ClientBase, table: TableName) {
  const { rows } = await client.query<{ id: number; key: string }>(
    `select c.id, c.key from corrections c join orphans o on o.id = c.row_id
     where c.table_name = '${table}' and c.undone_at is null order by c.id desc limit 1`,
  );
  if (rows[0])
    throw new UndoRefused(
      `${table} ${rows[0].key} rests on one of these rows and was corrected since; take correction ${rows[0].id} back first, on the page Corrections.`,
    );
}
