import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { judgingQuery } from "./judge";
import { joinNamed } from "./named-visits";
import { hangsOnVisit, list, storedColumns, storedKey } from "./stored-columns";

/**
 * Judges the staged rows of one table and puts the new ones into it. Nearly all rows are new and have a key that no other row has: those
 * are put straight in, and nothing is put in order or copied on its way. Of rows read now that are new, only how many there were is kept,
 * in `came_<table>`: by file, and by whatever tells their visits and practices. All others stand in `judged_<table>` with their
 * verdicts, and so do held rows judged again.
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
  const before = await lastRow(client, table);
  await putPlain(client, table, practices);
  if (await areLeft(client, table)) await judgeOthers(client, table, before, practices);
  await analyzeGrown(client, table);
}

/**
 * Puts in the rows that are new whatever becomes of the others: no other row has their key, and they were not held. The rows of one file
 * seldom share a key, so that it is tried first as if none did.
 */
async function putPlain(
  client: pg.ClientBase,
  table: TableName,
  practices: readonly string[] | null,
): Promise<void> {
  const notHeld = `select * from staged_${table} s where held_id is null`;
  const put = (rows: string) =>
    client.query(`
    with put as (${putting(table, `(${judgingQuery(table, { rows: `(${rows})`, alone: true, practices })})`)} returning ${told(table)}, file_id, id
    )${fresh(table)}
    insert into came_${table} select file_id, visit_id, practice, code, count(*) from put group by 1, 2, 3, 4`);
  if ((await isOfOneFile(client, table)) && (await works(client, () => put(notHeld)))) return;
  const { rowCount } = await client.query(
    `create temp table again_${table} on commit drop as select ${keyHash(table)} as hash from staged_${table} s group by 1 having count(*) > 1`,
  );
  if (rowCount) await client.query(`analyze again_${table}`);
  const alone = `not exists (select from again_${table} a where a.hash = ${keyHash(table)})`;
  await put(rowCount ? `${notHeld} and ${alone}` : notHeld);
}

async function isOfOneFile(client: pg.ClientBase, table: TableName): Promise<boolean> {
  const { rows } = await client.query<{ one: boolean }>(
    `select min(file_id) = max(file_id) as one from staged_${table}`,
  );
  return rows[0]?.one === true;
}

/** Is it done; else nothing of it is, as two rows had the same key. */
async function works(client: pg.ClientBase, put: () => Promise<unknown>): Promise<boolean> {
  await client.query("savepoint putting");
  try {
    await put();
    await client.query("release savepoint putting");
    return true;
  } catch (trouble) {
    if (!(trouble instanceof Error && "code" in trouble && trouble.code === uniqueViolation))
      throw trouble;
    await client.query("rollback to savepoint putting; release savepoint putting");
    return false;
  }
}

const uniqueViolation = "23505";

/** Judges what was not put in; the rows of the table up to `before` were accepted earlier. */
async function judgeOthers(
  client: pg.ClientBase,
  table: TableName,
  before: string,
  practices: readonly string[] | null,
): Promise<void> {
  const rest = `rest_${table}`;
  await client.query(
    `create temp table ${rest} on commit drop as ${notPut(table, before)}; analyze ${rest}`,
  );
  await client.query(`
    with judged as materialized (${judgingQuery(table, { rows: rest, practices })}
    ), put as (${putting(table, "judged")}${table === "sessions" ? " returning id" : ""}
    ), came as (
      insert into came_${table}
      select file_id, ${told(table)}, count(*) from judged where verdict = 'new' and held_id is null group by 1, 2, 3, 4
    )${fresh(table)}
    insert into judged_${table} select * from judged where verdict <> 'new' or held_id is not null`);
  await client.query(`drop table ${rest}`);
}

/** Rows with the same key have the same; so may others, seldom, which does no harm. A practice may be left out, so it does not count. */
function keyHash(table: TableName): string {
  const own = storedKey(table).filter((name) => name !== "visit_id");
  const key = hangsOnVisit(table) ? ["session_id", ...own] : own;
  return `hash_record_extended(row(${list(key, "s.")}), 0)`;
}

function notPut(table: TableName, before: string): string {
  const key = storedKey(table);
  const own = key.filter((name) => name !== "visit_id");
  const same = own.map((name) => `t."${name}" = s."${name}"`);
  const put = (more: readonly string[]) =>
    `not exists (select from "${table}" t where t.id > ${before} and ${[...more, ...same].join(" and ")})`;
  if (!hangsOnVisit(table)) return `select s.* from staged_${table} s where ${put([])}`;
  return `select s.* from staged_${table} s ${joinNamed}
    where f.visit_id is null or f.visits > 1 or ${put(["t.visit_id = f.visit_id"])}`;
}

function putting(table: TableName, judged: string): string {
  const names = storedColumns(table).map((column) => column.name);
  const visit = hangsOnVisit(table);
  const local = table === "sessions";
  return `
      insert into "${table}" (file_id, line, fields, ${visit ? "visit_id, " : ""}${list(names)}${local ? ", local_day" : ""})
      select j.file_id, j.line, j.fields, ${visit ? "j.visit_id, " : ""}${list(names, "j.")}
        ${local ? ", (j.started_at at time zone z.zone)::date" : ""}
      from ${judged} j ${local ? "join practices z on z.code = j.practice" : ""}
      where j.verdict = 'new'`;
}

/** SQL: notes that the facts of new visits are to be made. */
function fresh(table: TableName): string {
  return table === "sessions" ? ", fresh as (insert into touched select id from put)" : "";
}

/** SQL: visit_id, practice and code of a row, as far as its visits and practices are found by them. */
function told(table: TableName): string {
  if (hangsOnVisit(table)) return "visit_id, null::text as practice, null::text as code";
  const code = table === "people" ? "code" : "null::text";
  return `null::bigint as visit_id, practice, ${code} as code`;
}

/** The id that was given last; whoever else would give one waits. */
async function lastRow(client: pg.ClientBase, table: TableName): Promise<string> {
  const { rows } = await client.query<{ id: string }>(
    `select coalesce(pg_sequence_last_value(pg_get_serial_sequence('"${table}"', 'id')::regclass), 0)::text as id`,
  );
  return rows[0]?.id ?? "0";
}

/** Were fewer rows put in than are staged. */
async function areLeft(client: pg.ClientBase, table: TableName): Promise<boolean> {
  const { rows } = await client.query<{ left: boolean }>(
    `select (select count(*) from staged_${table}) > coalesce((select sum(rows) from came_${table}), 0) as left`,
  );
  return rows[0]?.left === true;
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
