import type pg from "pg";
import type { PeopleReach } from "@/lib/access/reach";
import { tableNames } from "@/lib/records/tables";
import { pool } from "../database";
import { raiseRevision } from "../facts/revision";
import { changing } from "../import/changing";
import { hangsOnVisit } from "../import/stored-columns";
import { ofGroup } from "./periods";

/** How many visits, upkeep entries and held rows are older than the first day that is kept. */
export async function oldRecords(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  const { rows } = await pool().query<{ old: number }>(
    `select ((select count(*) from sessions where local_day < $1::date) + (select count(*) from upkeep where day < $1::date)
       + (select count(*) from held h where ${heldIsOld}))::int as old`,
    [from],
  );
  return rows[0]?.old ?? 0;
}

/**
 * Deletes the records of days before the first that is kept, with all that hangs on them: their rows in every table, what was held,
 * mended, corrected and excepted of them, and the files still waiting since then. A held row that names no visit kept is as old as its
 * import. What imports counted stays as it was counted. Answers how many visits, upkeep entries and held rows went.
 */
export async function deleteOldRecords(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  return changing(async (client) => {
    await client.query(
      "create temp table old_visits (id bigint primary key, practice text, session_id text) on commit drop",
    );
    await client.query(
      "insert into old_visits select id, practice, session_id from sessions where local_day < $1::date",
      [from],
    );
    await client.query("analyze old_visits");
    const held = await heldOf(client, from);
    await mendedOf(client, from);
    for (const table of tableNames.filter(hangsOnVisit)) await rowsOf(client, table, "visit_id");
    for (const table of ["canal_facts", "visit_facts"])
      await client.query(`delete from ${table} t using old_visits o where o.id = t.visit_id`);
    for (const table of ["entered_exceptions", "exception_queries"])
      await client.query(
        `delete from ${table} t using old_visits o where o.practice = t.practice and o.session_id = t.session_id`,
      );
    const visits = await rowsOf(client, "sessions", "id");
    const upkeep = await client.query(
      `with gone as (delete from upkeep where day < $1::date returning id)
       , witnessed as (delete from witnesses w using gone g where w.table_name = 'upkeep' and w.row_id = g.id)
       select count(*)::int as gone from gone`,
      [from],
    );
    await raiseRevision(client);
    return held + visits + (upkeep.rows[0]?.gone ?? 0);
  });
}

/** SQL: is held row `h` of a visit before $1, or of none that is kept and of an import before $1. */
const heldIsOld = `exists (select from sessions v where v.session_id = h.session_id and (h.practice is null or v.practice = h.practice)
    and v.local_day < $1::date)
  or (not exists (select from sessions v where v.session_id = h.session_id and (h.practice is null or v.practice = h.practice))
    and exists (select from import_files f join imports i on i.id = f.import_id where f.id = h.file_id and i.started_at < $1::date))`;

async function heldOf(client: pg.ClientBase, from: string): Promise<number> {
  await client.query("create temp table old_held (id bigint primary key) on commit drop");
  await client.query(`insert into old_held select h.id from held h where ${heldIsOld}`, [from]);
  await client.query("delete from mended_rows m using old_held o where o.id = m.held_id");
  await client.query(
    "delete from witnesses w using old_held o where w.table_name = 'held' and w.row_id = o.id",
  );
  const { rowCount } = await client.query("delete from held h using old_held o where o.id = h.id");
  return rowCount ?? 0;
}

/** Mends of which no row is left, and corrections of those days. */
async function mendedOf(client: pg.ClientBase, from: string): Promise<void> {
  await client.query(
    "delete from mends m where m.at < $1::date and not exists (select from mended_rows r where r.mend_id = m.id)",
    [from],
  );
  await client.query(
    `delete from corrections c where c.day < $1::date or (c.day is null and c.at < $1::date)
       or exists (select from old_visits o where o.practice = c.practice and o.session_id = c.session_id)`,
    [from],
  );
}

/** Deletes what a table has of the old visits, with the other places it was seen. */
async function rowsOf(client: pg.ClientBase, table: string, visit: string): Promise<number> {
  const { rows } = await client.query<{ gone: number }>(
    `with gone as (delete from "${table}" t using old_visits o where o.id = t.${visit} returning t.id)
     , witnessed as (delete from witnesses w using gone g where w.table_name = '${table}' and w.row_id = g.id)
     select count(*)::int as gone from gone`,
  );
  return rows[0]?.gone ?? 0;
}
