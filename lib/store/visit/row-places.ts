import type { Place } from "@/lib/records/reason";
import { type TableName, tableNames } from "@/lib/records/tables";
import { pool } from "../database";

/** Where rows come from: the file and line each was first seen in, by table and number as irrigation/12. */
export async function rowPlaces(
  rows: readonly string[],
): Promise<ReadonlyMap<string, Place & { readonly sessionId: string | null }>> {
  const found = await Promise.all(tableNames.map((table) => placesIn(table, rows)));
  return new Map(found.flat());
}

async function placesIn(table: TableName, all: readonly string[]) {
  const ids = all.flatMap((row) =>
    row.startsWith(`${table}/`) ? [row.slice(table.length + 1)] : [],
  );
  if (ids.length === 0) return [];
  const visit =
    table === "upkeep" || table === "people"
      ? "null"
      : table === "sessions"
        ? "t.session_id"
        : "v.session_id";
  const join = visit === "v.session_id" ? "left join sessions v on v.id = t.visit_id" : "";
  const { rows } = await pool().query<{
    id: string;
    file: string;
    line: number;
    sessionId: string | null;
  }>(
    `select t.id::text, f.name as file, t.line, ${visit} as "sessionId" from "${table}" t join import_files f on f.id = t.file_id ${join}
     where t.id = any($1::bigint[])`,
    [ids],
  );
  return rows.map(({ id, ...place }) => [`${table}/${id}`, place] as const);
}
