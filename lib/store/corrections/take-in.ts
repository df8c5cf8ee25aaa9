import type pg from "pg";
import { type TableName, tableNames } from "@/lib/records/tables";
import { holdUsesAfterSeparation } from "../import/after-separation";
import { valueColumns } from "../import/judge";
import { brokenTogether, dayOf, practiceOf, taken, versions, visitOf } from "./versions-sql";

export type TakingIn = {
  /** Who takes them, or whose rule does. */
  readonly by: string;
  /** asked: a person took them; newer: the practice's rule did. */
  readonly rule: "asked" | "newer";
  /** Practices whose rows may be changed; null is all. */
  readonly practices: readonly string[] | null;
};

/**
 * Puts the versions that held rows bear in place of the accepted rows that they contradict. The old version is kept whole in
 * `corrections`, and its place stays a witness: it counts as accepted in its file as before, and the newer row as accepted in
 * its own. Where two of the rows are versions of one accepted row, neither is taken.
 *
 * The caller has locked and begun, made the staging tables and `touched`, and judges anew and renews the facts afterwards.
 *
 * @returns the held rows taken
 */
export async function takeIn(
  client: pg.ClientBase,
  ids: readonly string[],
  how: TakingIn,
): Promise<string[]> {
  const done: string[] = [];
  const { rows } = await client.query<{ table: TableName }>(
    `select distinct table_name as "table" from held where id = any($1)`,
    [ids],
  );
  const concerned = new Set(rows.map((row) => row.table));
  for (const table of tableNames) {
    if (!concerned.has(table)) continue;
    await client.query(takingQuery(table), [ids, how.practices]);
    await client.query(keepOldVersion(table), [how.rule, how.by]);
    await touch(client, table);
    await replace(client, table);
    await touch(client, table);
    await client.query(completeCorrection(table));
    done.push(...(await settleHeld(client, table, how.by)));
    if (table === "sessions") await addPlacesOf(client);
    if (table === "sessions" || table === "instruments") {
      await holdUsesAfterSeparation(client, usesConcerned(table));
    }
    await client.query(`drop table taking_${table}`);
  }
  return done;
}

function takingQuery(table: TableName): string {
  return `
    create temp table taking_${table} as
    select * from (
      select h.id as held_id, h.file_id, h.line, n.fields, e.id as row_id, ${visitOf(table)} as visit_id, h.key, h.session_id,
        ${practiceOf(table)} as practice, ${dayOf(table)} as day, h.values, ${brokenTogether(table)} as broken,
        count(*) over (partition by h.id) as rows, count(*) over (partition by e.id) as newer
      from ${versions(table)} and h.id = any($1)
    ) found where rows = 1 and newer = 1 and not broken and ($2::text[] is null or practice = any($2))`;
}

function keepOldVersion(table: TableName): string {
  return `
    insert into corrections (table_name, row_id, held_id, practice, session_id, day, key, before, after, rule, by)
    select '${table}', t.row_id, t.held_id, t.practice, t.session_id, t.day, t.key,
      jsonb_build_object('row', to_jsonb(e), 'witnesses', ${places(`'${table}'`, "t.row_id")}),
      jsonb_build_object('heldPlaces', ${places("'held'", "t.held_id")}), $1, $2
    from taking_${table} t join "${table}" e on e.id = t.row_id`;
}

/** SQL: the further places of a row, as they are now. */
function places(tableName: string, id: string): string {
  return `(select coalesce(jsonb_agg(jsonb_build_object('file', w.file_id, 'line', w.line)), '[]')
    from witnesses w where w.table_name = ${tableName} and w.row_id = ${id})`;
}

async function replace(client: pg.ClientBase, table: TableName) {
  await client.query(`
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select '${table}', e.id, e.file_id, e.line, e.fields from "${table}" e join taking_${table} t on t.row_id = e.id`);
  const values = valueColumns(table).map((name) => `"${name}" = ${taken(name)}`);
  const localDay =
    table === "sessions"
      ? [
          `local_day = (n.started_at at time zone (select zone from practices p where p.code = e.practice))::date`,
        ]
      : [];
  await client.query(`
    update "${table}" e set ${[...values, ...localDay, "file_id = t.file_id", "line = t.line", "fields = t.fields"].join(", ")}
    from taking_${table} t cross join lateral jsonb_populate_record(null::"${table}", t.values) n where e.id = t.row_id`);
}

function completeCorrection(table: TableName): string {
  return `
    update corrections c set after = c.after || jsonb_build_object('row', to_jsonb(e))
    from taking_${table} t join "${table}" e on e.id = t.row_id
    where c.table_name = '${table}' and c.held_id = t.held_id and c.undone_at is null`;
}

/** The held row is settled, its further places bear the accepted row, and the counts of their files follow. */
async function settleHeld(client: pg.ClientBase, table: TableName, by: string): Promise<string[]> {
  await client.query(`
    with further as (
      update witnesses w set table_name = '${table}', row_id = t.row_id, fields = t.fields
      from taking_${table} t where w.table_name = 'held' and w.row_id = t.held_id returning w.file_id
    ), moved as (
      select file_id, 1 as accepted, 0 as repeated from taking_${table} union all select file_id, 0, 1 from further
    )
    update import_files f set held = f.held - m.rows, accepted = f.accepted + m.accepted, repeated = f.repeated + m.repeated
    from (select file_id, count(*) as rows, sum(accepted) as accepted, sum(repeated) as repeated from moved group by file_id) m
    where m.file_id = f.id`);
  const { rows } = await client.query<{ id: string }>(
    `update held h set state = 'corrected', settled_by = $1, settled_at = now()
     from taking_${table} t where h.id = t.held_id returning h.id::text`,
    [by],
  );
  return rows.map((row) => row.id);
}

/** Notes the visits whose derived figures are to be renewed: those of the old version and of the newer one. */
async function touch(client: pg.ClientBase, table: TableName) {
  await client.query(
    table === "people"
      ? `insert into touched select v.id from taking_people t join people p on p.id = t.row_id join sessions v on v.practice = p.practice
         where v.clinician = p.code or exists (select from canals c where c.visit_id = v.id and c.clinician = p.code)`
      : `insert into touched select visit_id from taking_${table} where visit_id is not null`,
  );
}

/** The codes that the newer versions name; an import that brought them may have been undone meanwhile. */
async function addPlacesOf(client: pg.ClientBase) {
  await client.query(`
    insert into chairs (practice, code) select distinct v.practice, v.chair from taking_sessions t join sessions v on v.id = t.row_id
    on conflict do nothing`);
  await client.query(`
    insert into clinicians (practice, code) select distinct v.practice, c.code
    from taking_sessions t join sessions v on v.id = t.row_id cross join lateral (values (v.clinician), (v.supervisor)) c (code)
    where c.code is not null on conflict do nothing`);
}

/** SQL: the instruments of which a separation, or the time of a use, may have moved. */
function usesConcerned(table: "sessions" | "instruments"): string {
  return table === "sessions"
    ? "select i.instrument_id from instruments i join taking_sessions t on t.row_id = i.visit_id"
    : "select i.instrument_id from instruments i join taking_instruments t on t.row_id = i.id";
}
