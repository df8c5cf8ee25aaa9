import { join } from "node:path";
import { writeBackup } from "@/lib/store/backup/write-backup";
import { disconnect } from "@/lib/store/database";
import { migrate } from "@/lib/store/home/migrate";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { begun, lead, madeReady, rows } from "../reports/audits/audit-home";
import { bringIn } from "../store/bring-in";
import { bringFilesIn, key, mendSlip, type Stage } from "./acts";
import type { OwnServer } from "./own-server";
import { recordFiles, slips } from "./record-files";
import { type Reference, referenceOf } from "./sound";

/** A database with accepted and held rows, a mend, an import that can be undone and an audit ready to be signed. */
export type Base = {
  readonly database: ScratchDatabase;
  readonly stage: Stage;
  readonly before: Reference;
};

/** @param visits of each import: how long the acts take follows from it */
export async function makeBase(server: OwnServer, visits: number): Promise<Base> {
  const database = await server.database();
  await migrate(database.url);
  process.env.DATABASE_URL = database.url;
  await bringIn(rows());
  await bringFilesIn(await recordFiles(server.folder, "kept", visits, true));
  const undoMend = await mendSlip("canals", "preparation", slips.preparation, "rotary");
  const undoImport = await bringFilesIn(await recordFiles(server.folder, "undone", visits));
  const audit = await begun(lead);
  await madeReady(lead, audit);
  const files = await recordFiles(server.folder, "new", visits, true);
  const before = await referenceOf(database.url, "before");
  await disconnect();
  const backup = await backedUp(server, database.name, files);
  return { database, stage: { files, audit, undoImport, undoMend, backup }, before };
}

/** A backup of a copy with these files brought in as well. */
async function backedUp(server: OwnServer, base: string, files: Stage["files"]): Promise<string> {
  const copy = await server.database(base);
  process.env.DATABASE_URL = copy.url;
  await bringFilesIn(files);
  await disconnect();
  const file = join(server.folder, "one-import-more.tar.gz");
  await backupOf(copy.url, server.folder, file);
  await copy.drop();
  return file;
}

/** Writes a backup of a database without figures and secrets. */
export async function backupOf(url: string, folder: string, file: string): Promise<void> {
  const home = { url, viewersUrl: url, keeperUrl: null, folder, key, close: async () => {} };
  await writeBackup(home, file, { software: "faults", patientKey: "", secrets: false });
}
