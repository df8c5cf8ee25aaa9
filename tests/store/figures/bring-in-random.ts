import type { TableName } from "@/lib/records/tables";
import { pool, prisma } from "@/lib/store/database";
import type { StagedRow } from "@/lib/store/import/staging";
import type { HeldRow, Records } from "../../plain/records";
import { setByPractice } from "../../protocol/with-limits";
import { bringIn } from "../bring-in";
import { putVersions } from "./put-in-force";

/** Tables in the order in which a file can be brought in before what it belongs to. */
const backwards: readonly TableName[] = [
  "upkeep",
  "incidents",
  "followups",
  "instruments",
  "irrigation",
  "exceptions",
  "steps",
  "canals",
  "sessions",
  "people",
];

/** Random records instead of all that the database holds, with every default criterion in force. */
export async function bringInRandom(
  records: Records,
  order: "as-they-depend" | "backwards",
): Promise<void> {
  await empty(records);
  await putVersions(Object.keys(records.zones), setByPractice);
  await bringIn(rowsOf(records), order === "backwards" ? backwards : undefined);
}

async function empty(records: Records): Promise<void> {
  const tables = await pool().query(
    "select tablename from pg_tables where schemaname = 'public' and tablename not like '\\_prisma%'",
  );
  await pool().query(
    `truncate ${tables.rows.map((row) => `"${row.tablename}"`).join(", ")} cascade`,
  );
  const zones = Object.entries(records.zones).map(([code, zone]) => ({ code, name: code, zone }));
  await prisma().practice.createMany({ data: zones });
}

function rowsOf({ held, zones, ...tables }: Records) {
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
