import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { tableNames, tables } from "@/lib/records/tables";
import { prisma } from "../database";
import { changing } from "./changing";
import { mendedBack } from "./mended-back";
import { dropUnusedPlaces } from "./places";
import { publish } from "./publish";
import { storedColumns } from "./stored-columns";
import { takeBack, UndoRefused } from "./take-back";

/**
 * Takes an import back. A row that another import also bore passes to that witness and keeps what it bore; the
 * others go. Refused while an accepted row of another import hangs on a row that would go. Rows that were held
 * because of the ones taken back are judged again.
 */
export async function undoImport(reach: RecordsReach, importId: number): Promise<void> {
  const found = await prisma().import.findFirst({ where: { id: importId } });
  if (found?.state !== "done")
    throw new UndoRefused("This import is not there to undo, or is undone already.");
  await changing(async (client) => {
    await client.query(
      `create temp table files_back on commit drop as select id from import_files where import_id = ${Number(importId)}`,
    );
    await client.query("create temp table lines_back (file_id int, line int) on commit drop");
    await takeBack(client, reach.practices, refuseOrphans);
    await mendedBack(client);
    await publish(client, { zone: "UTC", practices: null, afterUndo: true });
    await dropUnusedPlaces(client);
    await client.query("update imports set state = 'undone', finished_at = now() where id = $1", [
      importId,
    ]);
  });
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
