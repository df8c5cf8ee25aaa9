import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { refuseCorrected } from "../corrections/refuse-corrected";
import { pool, prisma } from "../database";
import { dropUnusedPlaces } from "./places";
import { publish } from "./publish";
import { inTransaction } from "./run-import";
import { makeStaging } from "./staging";
import { hangsOnVisit, storedColumns } from "./stored-columns";

/** Why an import cannot be undone, in one sentence; nothing was changed. */
export class UndoRefused extends Error {
  override readonly name = "UndoRefused";
}

/**
 * Takes an import back. A row that another import also bore passes to that witness and keeps what it bore; the
 * others go. Refused while an accepted row of another import hangs on a row that would go. Rows that were held
 * because of the ones taken back are judged again.
 */
export async function undoImport(reach: RecordsReach, importId: number): Promise<void> {
  const found = await prisma().import.findUnique({ where: { id: importId } });
  if (found?.state !== "done")
    throw new UndoRefused("This import is not there to undo, or is undone already.");
  const client = await pool().connect();
  try {
    await makeStaging(client);
    await inTransaction(client, async () => {
      await client.query("select pg_advisory_xact_lock(hashtext('canal-audit publish'))");
      await takeBack(client, importId, reach.practices);
      await publish(client, { zone: "UTC", practices: null, afterUndo: true });
      await dropUnusedPlaces(client);
      await client.query("update imports set state = 'undone', finished_at = now() where id = $1", [
        importId,
      ]);
    });
  } finally {
    client.release(true);
  }
}

async function takeBack(
  client: pg.ClientBase,
  importId: number,
  practices: readonly string[] | null,
) {
  await client.query(
    `create temp table files_back on commit drop as select id from import_files where import_id = ${Number(importId)}`,
  );
  await client.query("create temp table touched (visit_id bigint) on commit drop");
  const correction = await refuseCorrected(client);
  if (correction) throw new UndoRefused(correction);
  for (const table of [...tableNames].reverse()) {
    await refuseOutsideReach(client, table, practices);
    await client.query(`
      create temp table heirs_${table} on commit drop as
      select distinct on (row_id) row_id, file_id, line, bit_or(fields) over (partition by row_id) as fields
      from witnesses where table_name = '${table}' and file_id not in (select id from files_back)
      order by row_id, file_id, line`);
  }
  await client.query("create temp table going (table_name text, id bigint) on commit drop");
  for (const table of tableNames) {
    await client.query(`
      insert into going select '${table}', t.id from "${table}" t
      where t.file_id in (select id from files_back) and not exists (select from heirs_${table} h where h.row_id = t.id)`);
  }
  await refuseOrphans(client);
  for (const table of tableNames) await passOn(client, table);
  await takeHeldBack(client);
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
    `select ${practice} as practice from "${table}" t where t.file_id in (select id from files_back) and not (${practice} = any($1)) limit 1`,
    [practices],
  );
  if (rows[0])
    throw new UndoRefused(
      `This import holds rows of practice ${rows[0].practice}, which is not yours to change; ask the group's record keeper.`,
    );
}

/** Refuses when a row that stays hangs on one that goes. */
async function refuseOrphans(client: pg.ClientBase) {
  for (const table of tableNames) {
    const parent = tables[table].parent;
    if (!parent) continue;
    const hasCanal = storedColumns(table).some((column) => column.name === "canal");
    const parents = [
      "select v.id as visit_id, null::text as canal from going g join sessions v on v.id = g.id where g.table_name = 'sessions'",
      hasCanal && table !== "canals"
        ? "select c.visit_id, c.canal from going g join canals c on c.id = g.id where g.table_name = 'canals'"
        : "",
    ].filter(Boolean);
    const use =
      parent === "instruments"
        ? "or exists (select from going g join instruments p on p.id = g.id where g.table_name = 'instruments' and p.visit_id = t.visit_id and p.canal = t.canal and p.seq = t.seq)"
        : "";
    const { rows } = await client.query(`
      with parents as (${parents.join(" union all ")})
      select v.session_id, i.name, t.line, i.import_id from "${table}" t join sessions v on v.id = t.visit_id join import_files i on i.id = t.file_id
      where not exists (select from going g where g.table_name = '${table}' and g.id = t.id)
        and (exists (select from parents p where p.visit_id = t.visit_id and (p.canal is null ${hasCanal && table !== "canals" ? "or p.canal = t.canal" : ""})) ${use})
      limit 1`);
    const child = rows[0];
    if (child) {
      throw new UndoRefused(
        `${child.name}, line ${child.line} (import ${child.import_id}), of visit ${child.session_id} rests on a row of this import; undo import ${child.import_id} first.`,
      );
    }
  }
}

async function passOn(client: pg.ClientBase, table: TableName) {
  if (hangsOnVisit(table)) {
    await client.query(`insert into touched select t.visit_id from "${table}" t where t.file_id in (select id from files_back)
      or t.id in (select row_id from witnesses where table_name = '${table}' and file_id in (select id from files_back))`);
  } else if (table === "sessions") {
    await client.query(`insert into touched select t.id from sessions t where t.file_id in (select id from files_back)
      or t.id in (select row_id from witnesses where table_name = 'sessions' and file_id in (select id from files_back))`);
  } else if (table === "people") {
    await client.query(
      `insert into touched select v.id from people t join sessions v using (practice) where t.file_id in (select id from files_back)`,
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
    from heirs_${table} h where h.row_id = t.id and t.file_id in (select id from files_back)`);
  const kept = storedColumns(table).filter((column) => !column.key && !column.record.required);
  const borne = `t.fields | coalesce((select bit_or(w.fields) from witnesses w where w.table_name = '${table}' and w.row_id = t.id
      and w.file_id not in (select id from files_back)), 0)`;
  if (kept.length > 0) {
    const cleared = kept.map(
      (column) =>
        `"${column.name}" = case when b.borne & ${column.bit} <> 0 then t."${column.name}" end`,
    );
    await client.query(`
      with b as (select t.id, ${borne} as borne from "${table}" t where t.id in (
        select row_id from witnesses where table_name = '${table}' and file_id in (select id from files_back)
        union select row_id from heirs_${table}))
      update "${table}" t set ${cleared.join(", ")} from b where b.id = t.id`);
  }
  await client.query(`delete from witnesses w using heirs_${table} h where w.table_name = '${table}' and w.row_id = h.row_id and w.file_id = h.file_id and w.line = h.line
    and exists (select from "${table}" t where t.id = h.row_id and t.file_id = h.file_id and t.line = h.line)`);
  await client.query(
    `delete from witnesses where table_name = '${table}' and file_id in (select id from files_back)`,
  );
}

async function takeHeldBack(client: pg.ClientBase) {
  await client.query(`
    insert into touched select v.id from held h join sessions v on v.session_id = h.session_id where h.file_id in (select id from files_back)`);
  await client.query(`
    with heirs as (
      select distinct on (w.row_id) w.row_id, w.file_id, w.line from witnesses w
      where w.table_name = 'held' and w.file_id not in (select id from files_back) order by w.row_id, w.file_id, w.line
    ), passed as (
      update held h set file_id = n.file_id, line = n.line from heirs n
      where h.id = n.row_id and h.file_id in (select id from files_back) returning h.id, h.file_id, h.line
    )
    delete from witnesses w using passed p where w.table_name = 'held' and w.row_id = p.id and w.file_id = p.file_id and w.line = p.line`);
  await client.query("delete from held where file_id in (select id from files_back)");
  await client.query(
    "delete from witnesses where table_name = 'held' and file_id in (select id from files_back)",
  );
}
