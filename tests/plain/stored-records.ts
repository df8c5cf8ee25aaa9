import type { Value, Values } from "@/lib/records/column";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { pool } from "@/lib/store/database";
import { type HeldRow, noRecords, type Records } from "./records";

/** The accepted and held rows of a database, as the plain computation takes them. */
export async function storedRecords(): Promise<Records> {
  const practices = await pool().query<{ code: string; zone: string }>(
    "select code, zone from practices",
  );
  const records = noRecords(
    Object.fromEntries(practices.rows.map(({ code, zone }) => [code, zone])),
  );
  for (const table of tableNames) records[table] = await rowsOf(table);
  const held = await pool().query(
    `select table_name as table, practice, session_id, canal from held where state = 'held' order by id`,
  );
  records.held = held.rows.map((row) => recorded(row) as unknown as HeldRow);
  return records;
}

async function rowsOf(table: TableName): Promise<Values[]> {
  const hangs =
    tables[table].columns.some(({ name }) => name === "session_id") && table !== "sessions";
  const own = tables[table].columns.filter(
    ({ name }) => !(hangs && (name === "session_id" || name === "practice")),
  );
  const columns = own.map(({ name, type }) =>
    type === "day" ? `t."${name}"::text` : `t."${name}"`,
  );
  const { rows } = await pool().query(
    hangs
      ? `select v.session_id, v.practice, ${columns.join(", ")} from "${table}" t join sessions v on v.id = t.visit_id order by t.id`
      : `select ${columns.join(", ")} from "${table}" t order by t.id`,
  );
  return rows.map(recorded);
}

/** A row without what is not recorded; a whole tooth is no canal, and instants are in ISO 8601. */
function recorded(row: Record<string, unknown>): Values {
  return Object.fromEntries(
    Object.entries(row).flatMap(([name, value]) =>
      value === null || value === ""
        ? []
        : [[name, value instanceof Date ? value.toISOString() : (value as Value)]],
    ),
  );
}
