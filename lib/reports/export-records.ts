import { createWriteStream } from "node:fs";
import { mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import type { RecordsReach } from "@/lib/access/reach";
import { copyOut, practicesByZone } from "@/lib/store/way-out/copy-out";

/** The folder has something in it already: nothing was written. */
export class FolderInUse extends Error {
  override readonly name = "FolderInUse";
}

/** A folder of record files, with the time zone in which they are to be brought in. */
export type ExportedFolder = {
  readonly folder: string;
  readonly zone: string;
  readonly practices: readonly string[];
};

/**
 * Writes everything that practices have as record files: a folder a time zone, in each a file a table, and a text that says how they
 * are brought in elsewhere. Patients are their pseudonyms. Figures computed from them are the same.
 *
 * @throws FolderInUse
 */
export async function exportRecords(
  reach: RecordsReach,
  folder: string,
  practice?: string,
): Promise<ExportedFolder[]> {
  await mkdir(folder, { recursive: true });
  if ((await readdir(folder)).length > 0)
    throw new FolderInUse(`${folder} is not empty; name a folder that is.`);
  const written: ExportedFolder[] = [];
  for (const [zone, practices] of await practicesByZone(reach, practice)) {
    const name = zone.replaceAll(/[^A-Za-z0-9+-]/g, "-");
    await mkdir(join(folder, name), { mode: 0o700 });
    await copyOut(reach, practices, (table, rows) =>
      pipeline(rows, createWriteStream(join(folder, name, `${table}.csv`), { mode: 0o600 })),
    );
    written.push({ folder: name, zone, practices });
  }
  await writeFile(join(folder, "READ-ME.txt"), readMe(written));
  return written;
}

function readMe(folders: readonly ExportedFolder[]): string {
  return [
    "Treatment records in the record format: CSV files (RFC 4180, UTF-8), one a table.",
    "Patients are pseudonyms; moments are in UTC; teeth are written by ISO 3950.",
    "Rows that are held here are among them as they were read, and will be held again.",
    "Protocols, targets, people's accounts and notes are no records and not among them.",
    "",
    "To bring them in elsewhere, a folder at a time, as each has its own time zone:",
    ...folders.map(
      ({ folder, zone, practices }) =>
        `  npm run canal-audit -- import ${folder} --zone ${zone}    (${practices.join(", ")})`,
    ),
    "",
  ].join("\n");
}
