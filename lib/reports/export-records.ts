import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { type TableName, tableNames } from "@/lib/records/tables";
import { acceptedRows } from "@/lib/store/way-out/accepted-rows";
import { heldToGo } from "@/lib/store/way-out/held-to-go";
import { inSnapshot } from "@/lib/store/way-out/in-snapshot";
import { keepWayOut } from "@/lib/store/way-out/keep-way-out";
import { practicesByZone } from "@/lib/store/way-out/practices-by-zone";
import { type WrittenFile, wayOutReadMe } from "@/lib/views/way-out-words";
import { heldAgain } from "./held-again";
import { headerLine, recordLine } from "./record-csv";
import { softwareVersion } from "./software-version";

/** The folder has something in it already: nothing was written. */
export class FolderInUse extends Error {
  override readonly name = "FolderInUse";
}

/** A folder of record files, with the time zone in which they are to be brought in. */
export type ExportedFolder = {
  readonly folder: string;
  readonly zone: string;
  readonly practices: readonly string[];
  readonly files: readonly WrittenFile[];
  /** Held rows that are not among them, as nothing of them was kept. */
  readonly left: number;
};

/**
 * Writes everything that practices have as record files: a folder a time zone, in each a file a table, and a text that says
 * how they are brought in elsewhere. In a file the accepted rows stand first and then the held ones, so that they are held
 * again there. Rows let go or undone are not among them. All files are of one moment; memory does not grow with the records.
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
  const zones = [...(await practicesByZone(reach, practice))].sort();
  const some = practice === undefined ? reach.practices : [practice];
  const written: ExportedFolder[] = [];
  await inSnapshot(async (client) => {
    for (const [place, [zone, practices]] of zones.entries()) {
      const name = zone.replaceAll(/[^A-Za-z0-9+-]/g, "-");
      await mkdir(join(folder, name), { mode: 0o700 });
      const files: WrittenFile[] = [];
      let left = 0;
      for (const table of tableNames) {
        const lines = linesOf(client, table, zone, place === zones.length - 1, some, () => {
          left += 1;
        });
        files.push(await writeFileOf(folder, `${name}/${table}.csv`, lines));
      }
      written.push({ folder: name, zone, practices, files, left });
    }
  });
  await writeFile(join(folder, "READ-ME.txt"), wayOutReadMe(written, softwareVersion));
  const sums = written.flatMap(({ files }) =>
    files.map(({ path, sha256 }) => `${sha256}  ${path}\n`),
  );
  await keepWayOut(
    reach,
    some === null ? [] : zones.flatMap(([, practices]) => practices),
    createHash("sha256").update(sums.join("")).digest("hex"),
  );
  return written;
}

/** The rows of a table, the header first; `last` is the folder that is brought in last. */
async function* linesOf(
  client: pg.ClientBase,
  table: TableName,
  zone: string,
  last: boolean,
  some: readonly string[] | null,
  onLeft: () => void,
): AsyncGenerator<string> {
  yield headerLine(table);
  for await (const cells of acceptedRows(client, table, zone, some)) yield recordLine(table, cells);
  for await (const row of heldToGo(client, table, zone, last, some)) {
    const again = heldAgain(row, zone, some !== null);
    if (again) yield recordLine(table, again.cells, again.ragged);
    else onLeft();
  }
}

async function writeFileOf(
  folder: string,
  path: string,
  lines: AsyncGenerator<string>,
): Promise<WrittenFile> {
  const hash = createHash("sha256");
  let rows = -1;
  async function* counted() {
    for await (const line of lines) {
      rows += 1;
      hash.update(line, "utf8");
      yield line;
    }
  }
  await pipeline(
    Readable.from(counted()),
    createWriteStream(join(folder, path), { mode: 0o600, flags: "wx" }),
  );
  return { path, rows, sha256: hash.digest("hex") };
}
