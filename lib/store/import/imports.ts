import type { RecordsReach } from "@/lib/access/reach";
import type { Reason } from "@/lib/records/reason";
import { pool, prisma } from "../database";
import { closeBrokenOff } from "./broken-off";

export type FileCounts = {
  readonly name: string;
  readonly table: string;
  readonly ignored: readonly string[];
  /** By which it was read; null for a file in the record format. */
  readonly mapping: string | null;
  readonly version: number | null;
  readonly read: number;
  readonly accepted: number;
  readonly repeated: number;
  readonly held: number;
  readonly letGo: number;
};

export type HeldRow = {
  readonly id: string;
  readonly file: string;
  readonly line: number;
  readonly importId: number;
  readonly table: string;
  readonly kind: string;
  readonly practice: string | null;
  readonly sessionId: string | null;
  /** The row's whole key, readable. */
  readonly key: string;
  readonly raw: Readonly<Record<string, string>>;
  readonly reasons: readonly Reason[];
  readonly state: "held" | "let-go";
  readonly settledBy: string | null;
  readonly settledReason: string | null;
};

/** The files of an import with what became of their rows. */
export async function filesOfImport(_reach: RecordsReach, importId: number): Promise<FileCounts[]> {
  const rows = await prisma().importFile.findMany({ where: { importId }, orderBy: { id: "asc" } });
  return rows.map(({ id, importId, tableName, ...file }) => ({ ...file, table: tableName }));
}

/** The held rows that an import brought, or brought again, in the order of file and line. */
export async function heldOfImport(
  reach: RecordsReach,
  importId: number,
  limit?: number,
): Promise<HeldRow[]> {
  const { rows } = await pool().query<HeldRow>(
    `${select}, (
       select h.id as held_id, h.file_id, h.line from held h
       union all select w.row_id, w.file_id, w.line from witnesses w where w.table_name = 'held'
     ) s join import_files f on f.id = s.file_id
     where s.held_id = h.id and h.state = 'held' and f.import_id = $1 and ${heldWithin(2)} order by s.file_id, s.line limit $3`,
    [importId, reach.practices, limit ?? null],
  );
  return rows;
}

/** Imports, newest first, that held rows of the reach's practices alone; of one without rows yet, the viewer's own. */
export async function recentImports(reach: RecordsReach, limit: number) {
  const ids = await importsWithin(reach, null, limit);
  return prisma().import.findMany({
    where: { id: { in: ids } },
    orderBy: { id: "desc" },
    include: { files: { orderBy: { id: "asc" } } },
  });
}

/** One import with its files, or null where there is none within the reach. */
export async function importOf(reach: RecordsReach, importId: number) {
  const [id] = await importsWithin(reach, importId, 1);
  if (id === undefined) return null;
  return prisma().import.findFirst({
    where: { id },
    include: { files: { orderBy: { id: "asc" } } },
  });
}

async function importsWithin(reach: RecordsReach, id: number | null, limit: number) {
  await closeBrokenOff();
  const { rows } = await pool().query<{ id: number }>(
    `select id from imports where ($1::int is null or id = $1)
       and ($2::text[] is null or (coalesce(practices, '{}') <@ $2 and (coalesce(practices, '{}') <> '{}' or by = $3))) order by id desc limit $4`,
    [id, reach.practices, reach.by, limit],
  );
  return rows.map((row) => row.id);
}

const select = `select h.id::text, f.name as file, f.import_id as "importId", h.line, h.table_name as "table", h.kind, h.practice,
  h.session_id as "sessionId", h.key, h.raw, h.reasons, h.state, h.settled_by as "settledBy", h.settled_reason as "settledReason"
  from held h`;

/** SQL: the held row `h` is within the practices of a parameter; one that names none is seen where its visit may be. */
export function heldWithin(parameter: number): string {
  return `($${parameter}::text[] is null or h.practice = any($${parameter}) or (h.practice is null
    and (h.session_id is null or not exists (select from sessions v where v.session_id = h.session_id and not v.practice = any($${parameter})))))`;
}
