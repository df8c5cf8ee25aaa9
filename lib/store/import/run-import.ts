import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import type { TableName } from "@/lib/records/tables";
import { pool, prisma } from "../database";
import { publishing } from "../wall/as-whom";
import { type Again, beginAgain, markRunning, TakenUp } from "./broken-off";
import { ImportCancelled, isCancelled } from "./cancel-import";
import { publish } from "./publish";
import { makeStaging, type StagedRow, stage } from "./staging";

export type SheetToImport = {
  readonly name: string;
  readonly table: TableName;
  /** Header names that no field takes; they are not kept. */
  readonly ignored: readonly string[];
  /** Some at a time (lib/intake/batched). */
  readonly rows: AsyncIterable<Iterable<StagedRow>>;
  /** The mapping by which it is read, where it is not in the record format. */
  readonly mapping?: { readonly name: string; readonly version: number | null };
};

export type ImportProgress = {
  readonly importId: number;
  readonly file?: string;
  readonly rowsRead: number;
  readonly state: "reading" | "publishing";
};

/**
 * Reads all sheets into staging and publishes them in one transaction: readers see all of an import or nothing.
 * Progress is written on a connection of its own. What goes wrong leaves no row behind and is thrown.
 *
 * @returns the import's id; its files and counts are in import_files.
 */
export async function runImport(
  reach: RecordsReach,
  sheets: AsyncIterable<SheetToImport>,
  how: {
    zone: string;
    /** How many rows the files seem to have, where that can be told. */
    rowsExpected?: number;
    /** Folder of the home's uploads in which the files lie until they are read. */
    upload?: string;
    /** Of the key that the rows' patients were hashed by. */
    keyFingerprint?: string;
    /** An import that was broken off and is begun again, its files being those of `upload`. */
    again?: Again;
    onBegin?: (importId: number) => void;
    onProgress?: (progress: ImportProgress) => void;
  },
): Promise<number> {
  const client = await pool().connect();
  const started = await begun(client, reach, how).catch((trouble) => {
    client.release(true);
    throw trouble;
  });
  how.onBegin?.(started.id);
  let rowsRead = 0;
  let heldSoFar = 0;
  const tell = async (data: { state?: string; rowsRead?: number; heldSoFar?: number }) => {
    const { cancel } = await prisma().import.update({ where: { id: started.id }, data });
    if (cancel) throw new ImportCancelled();
  };
  try {
    await makeStaging(client);
    for await (const sheet of sheets) {
      const file = await prisma().importFile.create({
        data: {
          importId: started.id,
          name: sheet.name,
          tableName: sheet.table,
          ignored: [...sheet.ignored],
          mapping: sheet.mapping?.name,
          version: sheet.mapping?.version,
        },
      });
      await stage(client, sheet.table, file.id, sheet.rows, async (count, held) => {
        rowsRead += count;
        heldSoFar += held;
        how.onProgress?.({ importId: started.id, file: sheet.name, rowsRead, state: "reading" });
        await tell({ rowsRead, heldSoFar });
      });
    }
    how.onProgress?.({ importId: started.id, rowsRead, state: "publishing" });
    await tell({ state: "publishing" });
    const put = async () => {
      await publish(client, { importId: started.id, zone: how.zone, practices: reach.practices });
      if (how.keyFingerprint) await requireKey(client, how.keyFingerprint);
    };
    await publishing(() => inTransaction(client, put));
    return started.id;
  } catch (trouble) {
    const cancelled = await isCancelled(trouble, started.id);
    const message = cancelled ? null : trouble instanceof Error ? trouble.message : String(trouble);
    await prisma().import.update({
      where: { id: started.id },
      data: { state: cancelled ? "cancelled" : "failed", message, finishedAt: new Date() },
    });
    throw cancelled ? new ImportCancelled() : trouble;
  } finally {
    // The connection is closed, not reused: its temporary staging tables go with it.
    client.release(true);
  }
}

/** The import's row, marked as running by this connection before anybody can take it for broken off. */
async function begun(
  client: pg.ClientBase,
  reach: RecordsReach,
  { rowsExpected, upload, again }: Parameters<typeof runImport>[2],
): Promise<{ readonly id: number }> {
  if (again !== undefined) {
    const { importId } = again;
    if ((await markRunning(client, importId)) && (await beginAgain(again, upload ?? null)))
      return { id: importId };
    throw new TakenUp();
  }
  const data = { by: reach.by, state: "reading", rowsExpected, upload };
  const { id } = await prisma().import.create({ data });
  await markRunning(client, id);
  return { id };
}

/** The key may have been rotated while the files were read; the lock of publishing is held. */
async function requireKey(client: pg.ClientBase, fingerprint: string): Promise<void> {
  const { rowCount } = await client.query(
    "select from settings where key = 'patient key fingerprint' and value <> $1",
    [fingerprint],
  );
  if (rowCount)
    throw new Error("The patient key was rotated while the files were read; bring them in again.");
}

/** Runs `work` in one transaction on this connection. */
export async function inTransaction<Result>(
  client: pg.ClientBase,
  work: () => Promise<Result>,
): Promise<Result> {
  await client.query("begin");
  try {
    const result = await work();
    await client.query("commit");
    return result;
  } catch (trouble) {
    await client.query("rollback");
    throw trouble;
  }
}
