import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { extname, join, relative } from "node:path";
import { pipeline } from "node:stream/promises";
import type { RecordsReach } from "@/lib/access/reach";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import type { FileCounts } from "@/lib/store/import/imports";
import { importThatTook, noteTaken } from "@/lib/store/taken-files";
import { knownMappings } from "./how-to-read";
import { type ImportHow, importRecords } from "./import-records";
import { recordFileEndings } from "./record-files";

/** What became of one file of a watched folder. */
export type Taken =
  | { readonly file: string; readonly importId: number; readonly files: readonly FileCounts[] }
  | { readonly file: string; readonly again: number }
  | { readonly file: string; readonly trouble: string };

/** What a watch remembers from one look to the next. */
export type Watch = {
  readonly folder: string;
  /** A file that was not written to for so many milliseconds, and is as it was at the look before, is finished. */
  readonly quiet: number;
  /** Size and time of each file at the last look. */
  seen: Map<string, string>;
  /** Files dealt with as they are now, and what is known of mappings at that time where there was trouble. */
  settled: Map<string, string>;
};

export function newWatch(folder: string, quiet: number): Watch {
  return { folder, quiet, seen: new Map(), settled: new Map() };
}

/**
 * Looks through the folder once and brings in what is finished, file by file: a file's content once, whatever its name. One that
 * cannot be read is told once, and tried again when it or the kept mappings have changed.
 */
export async function* takeFinished(
  reach: RecordsReach,
  watch: Watch,
  how: Pick<ImportHow, "zone" | "key" | "mappings">,
): AsyncGenerator<Taken> {
  const mappings = how.mappings ?? (await knownMappings(reach));
  const known = JSON.stringify(mappings.map((one) => [one.mapping.name, one.version]));
  for (const [file, state] of await finished(watch)) {
    const settled = watch.settled.get(file);
    if (settled === state || settled === `${state} ${known}`) continue;
    const taken = await take(reach, file, watch.folder, { ...how, mappings });
    watch.settled.set(file, "trouble" in taken ? `${state} ${known}` : state);
    yield taken;
  }
}

/** Files as they are, and have been since the look before. */
async function finished(watch: Watch): Promise<[string, string][]> {
  const now = new Map<string, string>();
  const ready: [string, string][] = [];
  for (const file of await filesIn(watch.folder)) {
    const found = await stat(join(watch.folder, file)).catch(() => null);
    if (!found?.isFile()) continue;
    const state = `${found.size} ${found.mtimeMs}`;
    now.set(file, state);
    if (watch.seen.get(file) === state && Date.now() - found.mtimeMs >= watch.quiet)
      ready.push([file, state]);
  }
  watch.seen = now;
  return ready;
}

/** Names that begin with a point or end otherwise than record files do are in the making, or something else. */
async function filesIn(folder: string): Promise<string[]> {
  const inside = await readdir(folder, { recursive: true, withFileTypes: true });
  return inside
    .filter((entry) => entry.isFile() && !entry.name.startsWith("."))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .filter((name) => recordFileEndings.includes(extname(name).toLowerCase()))
    .sort();
}

async function take(
  reach: RecordsReach,
  file: string,
  folder: string,
  how: ImportHow,
): Promise<Taken> {
  const path = join(folder, file);
  try {
    const sha256 = await sha256Of(path);
    const before = await importThatTook(reach, sha256);
    if (before !== null) return { file, again: before };
    const { importId, files } = await importRecords(reach, [{ path, name: file }], {
      ...how,
      heldListed: 0,
    });
    await noteTaken(reach, { sha256, name: file, importId });
    return { file, importId, files };
  } catch (trouble) {
    if (trouble instanceof UnreadableFile) return { file, trouble: trouble.message };
    const { code, message } = trouble as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "EACCES") return { file, trouble: `${file}: ${message}` };
    throw trouble;
  }
}

async function sha256Of(path: string): Promise<string> {
  const hash = createHash("sha256");
  await pipeline(createReadStream(path), hash);
  return hash.digest("hex");
}
