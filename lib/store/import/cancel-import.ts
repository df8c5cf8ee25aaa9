import type { RecordsReach } from "@/lib/access/reach";
import { pool, prisma } from "../database";
import { runningImports } from "./broken-off";
import { importOf } from "./imports";

/** Somebody ended the import before it was done; nothing of it is kept. */
export class ImportCancelled extends Error {
  override readonly name = "ImportCancelled";

  constructor() {
    super("The import was cancelled; nothing of it is kept.");
  }
}

/**
 * Ends a running import of the reach: while it reads, at its next rows; while it publishes, its transaction is broken off, so that
 * nothing half done is left. One that is done already stays.
 *
 * @returns false where there is none running
 */
export async function cancelImport(reach: RecordsReach, importId: number): Promise<boolean> {
  const found = await importOf(reach, importId);
  if (found?.state !== "reading" && found?.state !== "publishing") return false;
  const { count } = await prisma().import.updateMany({
    where: { id: importId, state: { in: ["reading", "publishing"] } },
    data: { cancel: true },
  });
  await pool().query(
    `select pg_cancel_backend(l.pid) from pg_locks l join imports i on i.id = $2
     where i.state = 'publishing' and l.locktype = 'advisory' and l.classid = $1::oid and l.objid = $2::oid`,
    [runningImports, importId],
  );
  return count > 0;
}

/** Was it the cancelling that ended the import: said so, or PostgreSQL broke its query off ("query_canceled"). */
export async function isCancelled(trouble: unknown, importId: number): Promise<boolean> {
  if (trouble instanceof ImportCancelled) return true;
  if ((trouble as { code?: unknown } | null)?.code !== "57014") return false;
  const found = await prisma().import.findFirst({ where: { id: importId } });
  return found?.cancel === true;
}
