import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { type TableName, tables } from "@/lib/records/tables";
import { holdUsesAfterSeparation } from "../import/after-separation";
import { changing } from "../import/changing";
import { valueColumns } from "../import/judge";
import { dropUnusedPlaces } from "../import/places";
import { publish } from "../import/publish";
import { hangsOnVisit, list, storedColumns, storedKey } from "../import/stored-columns";
import { earlierPlaces } from "./earlier-version";
import { sameKey } from "./versions-sql";

/** Why a correction cannot be taken back, in one sentence; nothing was changed. */
export class TakeBackRefused extends Error {
  override readonly name = "TakeBackRefused";
}

/**
 * Puts the old version back and holds the newer row again. Rows read since that agree with the newer version only are
 * held as well; those that agree with the old one stay, and what they completed stays filled in.
 *
 * @throws TakeBackRefused where it is not there to take back, or a later correction of the same row rests on it
 */
export async function takeBackCorrection(reach: RecordsReach, id: number): Promise<void> {
  await changing(async (client) => {
    const table = await correctedTable(client, reach, id);
    await refuseLater(client, table, id);
    await findRow(client, table, id);
    await touch(client, table);
    await stageDisagreeing(client, table);
    await putBack(client, table);
    await touch(client, table);
    await movePlaces(client, table, id);
    await holdAgain(client, id);
    await client.query(`update corrections set undone_by = $2, undone_at = now() where id = $1`, [
      id,
      reach.by,
    ]);
    if (table === "sessions" || table === "instruments")
      await holdUsesAfterSeparation(client, usesConcerned(table));
    await publish(client, { zone: "UTC", practices: null, afterUndo: true });
    await dropUnusedPlaces(client);
  });
}

async function correctedTable(
  client: pg.ClientBase,
  reach: RecordsReach,
  id: number,
): Promise<TableName> {
  const { rows } = await client.query<{ table: TableName }>(
    `select table_name as "table" from corrections
     where id = $1 and undone_at is null and ($2::text[] is null or practice = any($2)) for update`,
    [id, reach.practices],
  );
  const [found] = rows;
  if (!found)
    throw new TakeBackRefused(
      "This correction is not there to take back, or is taken back already.",
    );
  return found.table;
}

async function refuseLater(client: pg.ClientBase, table: TableName, id: number) {
  const same = storedKey(table).map(
    (name) => `l.before -> 'row' -> '${name}' = c.before -> 'row' -> '${name}'`,
  );
  const { rows } = await client.query<{ key: string }>(
    `select l.key from corrections c join corrections l on l.table_name = c.table_name and l.id > c.id
       and l.undone_at is null and ${same.join(" and ")} where c.id = $1 limit 1`,
    [id],
  );
  if (rows[0])
    throw new TakeBackRefused(
      `${rows[0].key} was corrected again since; take the later correction back first.`,
    );
}

/** The corrected row as it is now, beside what it was; found by its key, as its number may have changed. */
async function findRow(client: pg.ClientBase, table: TableName, id: number) {
  const { rowCount } = await client.query(
    `create temp table restoring on commit drop as
     select c.id, c.held_id, e.id as row_id, c.before, c.after, ${table === "sessions" ? "e.id" : tables[table].parent ? "e.visit_id" : "null::bigint"} as visit_id
     from corrections c cross join lateral jsonb_populate_record(null::"${table}", c.before -> 'row') b
     join "${table}" e on ${sameKey(table, "e", "b")} where c.id = ${Number(id)}`,
  );
  if (!rowCount)
    throw new TakeBackRefused(
      "The corrected row is held itself now, as its instrument separated before; settle that first.",
    );
  // Places read since the correction, and whether what they say goes with the old version.
  await client.query(`
    create temp table since on commit drop as
    select w.file_id, w.line, w.fields, (${disagrees(table)}) as disagrees,
      (w.fields & ~(e.fields | coalesce((select bit_or(o.fields) from witnesses o where o.table_name = '${table}' and o.row_id = e.id
        and ((o.file_id, o.line) < (w.file_id, w.line) or ${thereBefore("o")})), 0))) <> 0 as completes
    from restoring r join "${table}" e on e.id = r.row_id
    cross join lateral jsonb_populate_record(null::"${table}", r.before -> 'row') b
    join witnesses w on w.table_name = '${table}' and w.row_id = e.id
    where not ${thereBefore("w")}`);
}

/** SQL: the place was one of the two versions' when the correction was made; whatever its file's number, it was there first. */
function thereBefore(place: string): string {
  return `((${place}.file_id, ${place}.line) = (b.file_id, b.line)
    or exists (select from jsonb_to_recordset((r.before -> 'witnesses') || (r.after -> 'heldPlaces')) as p (file int, line int)
      where p.file = ${place}.file_id and p.line = ${place}.line))`;
}

function disagrees(table: TableName): string {
  const columns = storedColumns(table).filter((column) => !column.key);
  return columns.length === 0
    ? "false"
    : columns
        .map(
          ({ name, bit }) =>
            `(w.fields & ${bit} <> 0 and b."${name}" is not null and b."${name}" is distinct from e."${name}")`,
        )
        .join(" or ");
}

/** Rows that agree with the newer version only are read anew: their file counts them again when they are judged. */
async function stageDisagreeing(client: pg.ClientBase, table: TableName) {
  const columns = storedColumns(table);
  const says = columns.map(({ name, bit, key }) =>
    key ? `e."${name}"` : `case when s.fields & ${bit} <> 0 then e."${name}" end`,
  );
  const practiceBit = 2 ** tables[table].columns.findIndex((column) => column.name === "practice");
  const visit = hangsOnVisit(table)
    ? {
        names: "practice, session_id, ",
        values: `case when s.fields & ${practiceBit} <> 0 then v.practice end, v.session_id, `,
        join: "join sessions v on v.id = e.visit_id",
      }
    : { names: "", values: "", join: "" };
  await client.query(`
    insert into staged_${table} (file_id, line, fields, ${visit.names}${list(columns.map((column) => column.name))})
    select s.file_id, s.line, s.fields, ${visit.values}${says.join(", ")}
    from since s cross join restoring r join "${table}" e on e.id = r.row_id ${visit.join} where s.disagrees`);
  await client.query(`
    update import_files f set read = f.read - n.rows, accepted = f.accepted - n.accepted, repeated = f.repeated - n.rows + n.accepted
    from (select file_id, count(*) as rows, count(*) filter (where completes) as accepted from since where disagrees group by file_id) n
    where n.file_id = f.id`);
  await client.query(`
    delete from witnesses w using since s, restoring r
    where s.disagrees and w.table_name = '${table}' and w.row_id = r.row_id and w.file_id = s.file_id and w.line = s.line`);
}

async function putBack(client: pg.ClientBase, table: TableName) {
  const bits = new Map(storedColumns(table).map(({ name, bit }) => [name, bit]));
  const values = valueColumns(table).map(
    (name) =>
      `"${name}" = coalesce(b."${name}", case when k.borne & ${bits.get(name)} <> 0 then e."${name}" end)`,
  );
  const place = ["file_id", "line", "fields", ...(table === "sessions" ? ["local_day"] : [])];
  await client.query(`
    update "${table}" e set ${[...values, ...place.map((name) => `"${name}" = b."${name}"`)].join(", ")}
    from restoring r cross join lateral jsonb_populate_record(null::"${table}", r.before -> 'row') b
    cross join (select coalesce(bit_or(fields), 0) as borne from since where not disagrees) k
    where e.id = r.row_id`);
}

/** The places of the newer version go back to the held row, those of the old one to the accepted row. */
async function movePlaces(client: pg.ClientBase, table: TableName, id: number) {
  await client.query(`
    delete from witnesses w using restoring r join "${table}" e on e.id = r.row_id
    where w.table_name = '${table}' and w.row_id = r.row_id and w.file_id = e.file_id and w.line = e.line`);
  await client.query(`
    update witnesses w set table_name = 'held', row_id = r.held_id, fields = 0
    from restoring r, jsonb_to_recordset(r.after -> 'heldPlaces') as p (file int, line int)
    where w.table_name = '${table}' and w.row_id = r.row_id and w.file_id = p.file and w.line = p.line`);
  await client.query(
    `update witnesses w set table_name = '${table}', row_id = r.row_id
     from restoring r where w.table_name = '${earlierPlaces}' and w.row_id = $1`,
    [id],
  );
}

async function holdAgain(client: pg.ClientBase, id: number) {
  await client.query(
    `update held h set state = 'held', settled_by = null, settled_at = null
     from corrections c where c.id = $1 and h.id = c.held_id`,
    [id],
  );
  await client.query(
    `update import_files f set held = f.held + n.rows, accepted = f.accepted - n.accepted, repeated = f.repeated - n.rows + n.accepted
     from (select file_id, count(*) as rows, sum(accepted) as accepted from (
       select h.file_id, 1 as accepted from corrections c join held h on h.id = c.held_id where c.id = $1
       union all select p.file, 0 from corrections c, jsonb_to_recordset(c.after -> 'heldPlaces') as p (file int, line int) where c.id = $1
     ) places group by file_id) n where n.file_id = f.id`,
    [id],
  );
}

async function touch(client: pg.ClientBase, table: TableName) {
  await client.query(
    table === "people"
      ? `insert into touched select v.id from restoring r join people p on p.id = r.row_id join sessions v on v.practice = p.practice
         where v.clinician = p.code or exists (select from canals c where c.visit_id = v.id and c.clinician = p.code)`
      : "insert into touched select visit_id from restoring where visit_id is not null",
  );
}

function usesConcerned(table: "sessions" | "instruments"): string {
  return table === "sessions"
    ? "select i.instrument_id from instruments i join restoring r on r.row_id = i.visit_id"
    : "select i.instrument_id from instruments i join restoring r on r.row_id = i.id";
}
