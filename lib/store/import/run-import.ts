import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import type { TableName } from "@/lib/records/tables";
import { pool, prisma } from "../database";
import { homeFolder } from "../home/home-folder";
import { publishing } from "../wall/as-whom";
import { Behind } from "./behind";
import { type Again, beginAgain, markRunning, TakenUp } from "./broken-off";
import { ImportCancelled, isCancelled } from "./cancel-import";
import { InSteps } from "./in-steps";
import { Spool } from "./spool";
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
 * Reads all sheets into staging and publishes them in one transaction: readers see all of an import or nothing. Others who change
 * records wait from the first table on that is published.
 * Progress is written on a connection of its own. What goes wrong leaves no row behind and is thrown.
 *
 * @returns the import's id; its files and counts are in import_files.
 */
export async function runImport(
  reach: RecordsReach,
  sheets: AsyncIterable<SheetToImport>,
  how: {
    zone: string;
    /** The table of each sheet to come, where that can be told: then those that are whole are published while others are read. */
    tables?: readonly TableName[];
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
  const publication = { importId: started.id, zone: how.zone, practices: reach.practices };
  const steps = new InSteps(client, publication, how.tables);
  const notes = new Behind();
  const spool = new Spool(homeFolder());
  const read = async (behind: Behind) => {
    for await (const sheet of sheets) {
      steps.begins(sheet.table);
      const { id: fileId } = await noteFile(started.id, sheet);
      await stage(
        client,
        { behind, spool },
        { ...sheet, fileId },
        sheet.rows,
        async (count, held) => {
          rowsRead += count;
          heldSoFar += held;
          how.onProgress?.({ importId: started.id, file: sheet.name, rowsRead, state: "reading" });
          const sofar = { rowsRead, heldSoFar };
          await notes.add(0, () => tell(sofar));
        },
      );
      for (const table of steps.staged(sheet.table))
        await behind.add(0, () => steps.publish(table));
    }
    await behind.done();
    await notes.done();
  };
  try {
    await makeStaging(client);
    await inTransaction(
      client,
      async () => {
        const behind = new Behind();
        try {
          await read(behind);
        } catch (trouble) {
          await Promise.all([behind.end(trouble), notes.end(trouble)]);
          throw trouble;
        }
        how.onProgress?.({ importId: started.id, rowsRead, state: "publishing" });
        await tell({ state: "publishing" });
        await steps.end();
        if (how.keyFingerprint) await requireKey(client, how.keyFingerprint);
      },
      publishing,
    );
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
    await spool.close();
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

/** The file's row, which its counts are added to. */
function noteFile(importId: number, { name, table, ignored, mapping }: SheetToImport) {
  return prisma().importFile.create({
    data: {
      ...{ importId, name, tableName: table, ignored: [...ignored] },
      ...{ mapping: mapping?.name, version: mapping?.version },
    },
  });
}

/** Runs `work` in one transaction on this connection. @param as as whom the transaction is begun */
export async function inTransaction<Result>(
  client: pg.ClientBase,
  work: () => Promise<Result>,
  as: (begin: () => Promise<unknown>) => Promise<unknown> = (begin) => begin(),
): Promise<Result> {
  await as(() => client.query("begin"));
  try {
    const result = await work();
    await client.query("commit");
    return result;
  } catch (trouble) {
    await client.query("rollback");
    throw trouble;
  }
}
