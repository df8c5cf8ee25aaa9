import { holderReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import { type TableName, tableNames } from "@/lib/records/tables";
import { pool } from "@/lib/store/database";
import { type FileCounts, filesOfImport } from "@/lib/store/import/imports";
import { runImport, type SheetToImport } from "@/lib/store/import/run-import";
import type { StagedRow } from "@/lib/store/import/staging";

export type Rows = Partial<Record<TableName, readonly (Values | StagedRow)[]>>;

/**
 * Imports checked rows as files in the order given, each table a file, and answers the import and its counts by table.
 *
 * @param told whether the import is told which tables will come, so that it may publish some while it reads others
 */
export async function bringIn(
  rows: Rows,
  order: readonly TableName[] = tableNames,
  { told = false } = {},
): Promise<{ importId: number; counts: Partial<Record<TableName, FileCounts>> }> {
  async function* sheets(): AsyncGenerator<SheetToImport> {
    for (const table of order) {
      const some = rows[table];
      if (some) yield { name: `${table}.csv`, table, ignored: [], rows: staged(some) };
    }
  }
  const tables = told ? order.filter((table) => rows[table]) : undefined;
  const how = { zone: "Europe/London", tables };
  const importId = await runImport(holderReach().records, sheets(), how);
  const files = await filesOfImport(holderReach().records, importId);
  return { importId, counts: Object.fromEntries(files.map((file) => [file.table, file])) };
}

async function* staged(rows: readonly (Values | StagedRow)[]): AsyncGenerator<StagedRow[]> {
  yield rows.map((row, place) =>
    "line" in row ? (row as StagedRow) : { line: place + 2, values: row as Values },
  );
}

/** Everything that decides a figure, in a stable order, to compare one state of the database with another. */
export async function snapshot(): Promise<Record<string, unknown[]>> {
  const found: Record<string, unknown[]> = {};
  for (const table of ["canal_facts", "visit_facts"]) {
    const { rows } = await pool().query(
      `select v.session_id, f.* from ${table} f join sessions v on v.id = f.visit_id order by f.practice, v.session_id, ${table === "canal_facts" ? "f.canal" : "f.clinician"}`,
    );
    found[table] = rows.map(({ visit_id, ...row }) => row);
  }
  for (const table of ["upkeep", "people"]) {
    const { rows } = await pool().query(`select * from ${table}`);
    found[table] = rows.map(({ id, file_id, line, fields, ...row }) => JSON.stringify(row)).sort();
  }
  const held = await pool().query("select table_name, kind, key, state from held order by 1, 2, 3");
  found.held = held.rows;
  return found;
}

export const visit: Values = {
  session_id: "V-1",
  practice: "OAK",
  chair: "OAK-1",
  clinician: "C01",
  patient: "hash-1",
  started_at: "2026-07-03T08:10:00.000Z",
  ended_at: "2026-07-03T09:00:00.000Z",
  tooth: "26",
  tooth_notation: "fdi",
  treatment: "primary",
  outcome: "completed",
};
export const canal: Values = {
  session_id: "V-1",
  canal: "MB1",
  preparation: "rotary",
  timer_reset: "yes",
};
export const delivery: Values = {
  session_id: "V-1",
  canal: "MB1",
  seq: 1,
  irrigant: "naocl",
  volume_ml: 4.5,
  duration_s: 60,
  delivery: "syringe",
};
export const use: Values = {
  session_id: "V-1",
  canal: "MB1",
  seq: 1,
  kind: "rotary",
  instrument_id: "i-1",
  separated: 0,
};
