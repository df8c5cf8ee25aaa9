import type pg from "pg";
import { type TableName, tableNames } from "@/lib/records/tables";
import { refuseCorrected } from "../corrections/refuse-corrected";
import { hangsOnVisit, storedColumns } from "./stored-columns";
import { visitsOfHeld } from "./visits-of-held";

/** Why something cannot be undone, in one sentence; nothing was changed. */
export class UndoRefused extends Error {
  override readonly name = "UndoRefused";
}

/**
 * Takes back the places in the temporary tables `files_back` (id: whole files) and `lines_back` (file_id, line): a row that was seen
 * elsewhere too passes to that witness and keeps what it bore; the others go. The visits are noted in `touched`, and the caller judges
 * anew what is held.
 *
 * @param orphans what becomes of rows that stay and hang on one that goes (temporary table `going`: table_name, id)
 * @throws UndoRefused
 */
export async function takeBack(
  client: pg.ClientBase,
  practices: readonly string[] | null,
  orphans: (client: pg.ClientBase) => Promise<void>,
): Promise<void> {
  const correction = await refuseCorrected(client);
  if (correction) throw new UndoRefused(correction);
  for (const table of [...tableNames].reverse()) {
    await refuseOutsideReach(client, table, practices);
    await client.query(`
      create temp table heirs_${table} on commit drop as
      select distinct on (row_id) row_id, file_id, line, bit_or(fields) over (partition by row_id) as fields
      from witnesses w where table_name = '${table}' and not ${isBack("w")}
      order by row_id, file_id, line`);
  }
  await client.query("create temp table going (table_name text, id bigint) on commit drop");
  for (const table of tableNames) {
    await client.query(`
      insert into going select '${table}', t.id from "${table}" t
      where ${isBack("t")} and not exists (select from heirs_${table} h where h.row_id = t.id)`);
  }
  await orphans(client);
  for (const table of tableNames) await passOn(client, table);
  await takeHeldBack(client);
}

/** SQL: the place of `row` is among those taken back. */
export function isBack(row: string): string {
  return `(${row}.file_id in (select id from files_back) or (${row}.file_id, ${row}.line) in (select file_id, line from lines_back))`;
}

async function refuseOutsideReach(
  client: pg.ClientBase,
  table: TableName,
  practices: readonly string[] | null,
) {
  if (practices === null) return;
  const practice = hangsOnVisit(table)
    ? "(select v.practice from sessions v where v.id = t.visit_id)"
    : "t.practice";
  const { rows } = await client.query(
    `select ${practice} as practice from "${table}" t where ${isBack("t")} and not (${practice} = any($1)) limit 1`,
    [practices],
  );
  if (rows[0])
    throw new UndoRefused(
      `Among the rows are some of practice ${rows[0].practice}, which are not yours to change; ask the group's record keeper.`,
    );
}

async function passOn(client: pg.ClientBase, table: TableName) {
  if (hangsOnVisit(table)) {
    await client.query(`insert into touched select t.visit_id from "${table}" t where ${isBack("t")}
      or t.id in (select row_id from witnesses w where table_name = '${table}' and ${isBack("w")})`);
  } else if (table === "sessions") {
    await client.query(`insert into touched select t.id from sessions t where ${isBack("t")}
      or t.id in (select row_id from witnesses w where table_name = 'sessions' and ${isBack("w")})`);
  } else if (table === "people") {
    await client.query(
      `insert into touched select v.id from people t join sessions v using (practice) where ${isBack("t")}
       or t.id in (select row_id from witnesses w where table_name = 'people' and ${isBack("w")})`,
    );
  }
  await client.query(
    `delete from "${table}" t using going g where g.table_name = '${table}' and g.id = t.id`,
  );
  await client.query(
    `delete from witnesses w using going g where w.table_name = '${table}' and g.table_name = w.table_name and w.row_id = g.id`,
  );
  // The next witness stands in the row; what only the undone import bore is empty again.
  await client.query(`update "${table}" t set file_id = h.file_id, line = h.line, fields = h.fields
    from heirs_${table} h where h.row_id = t.id and ${isBack("t")}`);
  const kept = storedColumns(table).filter((column) => !column.key && !column.record.required);
  const borne = `t.fields | coalesce((select bit_or(w.fields) from witnesses w where w.table_name = '${table}' and w.row_id = t.id
      and not ${isBack("w")}), 0)`;
  if (kept.length > 0) {
    const cleared = kept.map(
      (column) =>
        `"${column.name}" = case when b.borne & ${column.bit} <> 0 then t."${column.name}" end`,
    );
    await client.query(`
      with b as (select t.id, ${borne} as borne from "${table}" t where t.id in (
        select row_id from witnesses w where table_name = '${table}' and ${isBack("w")}
        union select row_id from heirs_${table}))
      update "${table}" t set ${cleared.join(", ")} from b where b.id = t.id`);
  }
  await client.query(`delete from witnesses w using heirs_${table} h where w.table_name = '${table}' and w.row_id = h.row_id and w.file_id = h.file_id and w.line = h.line
    and exists (select from "${table}" t where t.id = h.row_id and t.file_id = h.file_id and t.line = h.line)`);
  await client.query(`delete from witnesses w where table_name = '${table}' and ${isBack("w")}`);
}

/** Held rows pass to their next place too. Those that a mend let in follow in lib/store/import/mended-back. */
async function takeHeldBack(client: pg.ClientBase) {
  await client.query(`
    insert into touched ${visitsOfHeld(isBack("h"))}`);
  await client.query(`
    with heirs as (
      select distinct on (w.row_id) w.row_id, w.file_id, w.line from witnesses w
      where w.table_name = 'held' and not ${isBack("w")} order by w.row_id, w.file_id, w.line
    ), passed as (
      update held h set file_id = n.file_id, line = n.line from heirs n
      where h.id = n.row_id and h.state <> 'mended' and ${isBack("h")} returning h.id, h.file_id, h.line
    )
    delete from witnesses w using passed p where w.table_name = 'held' and w.row_id = p.id and w.file_id = p.file_id and w.line = p.line`);
  await client.query(`delete from held h where h.state <> 'mended' and ${isBack("h")}`);
  await client.query(`delete from witnesses w where table_name = 'held' and ${isBack("w")}`);
}
