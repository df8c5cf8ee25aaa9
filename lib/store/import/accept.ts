import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { judgingQuery } from "./judge";
import { hangsOnVisit, list, storedColumns, storedKey } from "./stored-columns";

/**
 * Judges the staged rows of one table and puts the new ones into it, in one statement: nearly all rows are new, and none of those is
 * copied on its way. Of rows read now that are new, only how many there were is kept, in `came_<table>`: by file, and by whatever tells
 * their visits and practices. All others stand in `judged_<table>` with their verdicts, and so do held rows judged again.
 */
export async function acceptNew(
  client: pg.ClientBase,
  table: TableName,
  practices: readonly string[] | null,
): Promise<void> {
  await client.query(`
    create temp table judged_${table} on commit drop as
    select s.*, null::bigint as visit_id, null::text as in_practices, null::bigint as row_id, null::text as verdict
    from staged_${table} s with no data`);
  await client.query(
    `create temp table came_${table} (file_id int, visit_id bigint, practice text, code text, rows bigint) on commit drop`,
  );
  await client.query(`
    with judged as materialized (${judgingQuery(table, practices)}
    ), put as (${putting(table)}
    ), came as (
      insert into came_${table}
      select file_id, ${told(table)}, count(*) from judged where verdict = 'new' and held_id is null group by 1, 2, 3, 4
    )${table === "sessions" ? ", fresh as (insert into touched select id from put)" : ""}
    insert into judged_${table} select * from judged where verdict <> 'new' or held_id is not null`);
  await analyzeGrown(client, table);
}

function putting(table: TableName): string {
  const names = storedColumns(table).map((column) => column.name);
  const visit = hangsOnVisit(table);
  const local = table === "sessions";
  return `
      insert into "${table}" (file_id, line, fields, ${visit ? "visit_id, " : ""}${list(names)}${local ? ", local_day" : ""})
      select j.file_id, j.line, j.fields, ${visit ? "j.visit_id, " : ""}${list(names, "j.")}
        ${local ? ", (j.started_at at time zone z.zone)::date" : ""}
      from judged j ${local ? "join practices z on z.code = j.practice" : ""}
      where j.verdict = 'new' ${local ? "returning id" : ""}`;
}

/** SQL: visit_id, practice and code of a judged row, as far as its visits and practices are found by them. */
function told(table: TableName): string {
  if (hangsOnVisit(table)) return "visit_id, null::text, null::text";
  return `null::bigint, practice, ${table === "people" ? "code" : "null::text"}`;
}

/**
 * Tells the planner what a table holds that grew by more than a tenth: how many rows, and how its keys lie. What else it wants to know
 * PostgreSQL finds out by itself within a minute.
 */
async function analyzeGrown(client: pg.ClientBase, table: TableName): Promise<void> {
  const { rows } = await client.query<{ grown: boolean }>(
    `select coalesce((select sum(rows) from came_${table}), 0) > 0.1 * greatest(reltuples, 0) as grown
     from pg_class where oid = '"${table}"'::regclass`,
  );
  if (rows[0]?.grown) await client.query(`analyze "${table}" (${list(storedKey(table))})`);
}
