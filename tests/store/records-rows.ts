import { pool, prisma } from "@/lib/store/database";
import type { StagedRow } from "@/lib/store/import/staging";
import type { HeldRow, Records } from "../plain/records";

/** Empties the database and puts the practices of the records into it. */
export async function emptyFor(records: Records): Promise<void> {
  // What is signed and the log cannot be emptied. The settings stay: the revision of the records only ever rises, and what is kept goes by it.
  const tables = await pool().query(
    "select tablename from pg_tables where schemaname = 'public' and tablename not like '\\_prisma%' and tablename not in ('settings', 'signed_audits', 'log_lines')",
  );
  await pool().query(
    `truncate ${tables.rows.map((row) => `"${row.tablename}"`).join(", ")} cascade`,
  );
  const zones = Object.entries(records.zones).map(([code, zone]) => ({ code, name: code, zone }));
  await prisma().practice.createMany({ data: zones });
}

/** The rows of records as an import takes them; a held one is staged as one that was refused. */
export function rowsOf({ held, zones, ...tables }: Records) {
  const rows: Record<string, StagedRow[]> = {};
  for (const [table, some] of Object.entries(tables))
    rows[table] = some.map((values, place) => ({ line: place + 2, values }));
  for (const [place, row] of held.entries())
    rows[row.table] = [...(rows[row.table] ?? []), heldAsRead(row, place)];
  return rows;
}

function heldAsRead(row: HeldRow, place: number): StagedRow {
  const { practice, session_id, canal } = row;
  return {
    line: 10_000 + place,
    key: `held ${place}`,
    practice,
    session_id,
    canal: canal ?? "",
    raw: { place: String(place) },
    reasons: [],
  };
}
