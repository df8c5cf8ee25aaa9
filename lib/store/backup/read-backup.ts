import { createHash, type Hash } from "node:crypto";
import { createReadStream } from "node:fs";
import { createGunzip } from "node:zlib";
import { HomeTrouble } from "../home/home-trouble";
import { type Manifest, manifestName, manifestShape } from "./manifest";
import { DamagedArchive, type TarEntry, tarEntries } from "./tar";

/** The entries of a backup, unpacked as they are read. @throws HomeTrouble where the file is not whole */
export async function* entriesOf(file: string): AsyncGenerator<TarEntry> {
  const read = createReadStream(file);
  const unpacked = createGunzip();
  read.once("error", (error) => unpacked.destroy(error));
  try {
    yield* tarEntries(read.pipe(unpacked));
  } catch (trouble) {
    throw notWhole(file, trouble);
  } finally {
    read.destroy();
  }
}

/** The table that an entry holds a part of, or undefined. */
export function tableOf(entry: TarEntry): string | undefined {
  return /^tables\/([^/]+)\/\d+\.copy$/.exec(entry.name)?.[1];
}

/** The home's file that an entry holds a part of, or undefined. */
export function homeFileOf(entry: TarEntry): string | undefined {
  return /^home\/(.+)$/.exec(entry.name)?.[1];
}

/**
 * Reads the whole of a backup and checks every table and file against the manifest, before anything is touched.
 *
 * @throws HomeTrouble where it is no backup, not whole, or a hash is not what the manifest says
 */
export async function checkedBackup(file: string): Promise<Manifest> {
  const found = new Map<string, { hash: Hash; rows: number; bytes: number }>();
  let manifest: Manifest | undefined;
  for await (const entry of entriesOf(file)) {
    if (entry.name === manifestName) {
      manifest = readManifest(file, entry.content);
      continue;
    }
    const sum = found.get(placeOf(entry)) ?? { hash: createHash("sha256"), rows: 0, bytes: 0 };
    sum.hash.update(entry.content);
    sum.bytes += entry.content.length;
    for (const byte of entry.content) if (byte === 10) sum.rows += 1;
    found.set(placeOf(entry), sum);
  }
  if (!manifest) throw new HomeTrouble(`${file} is no backup of this software, or not whole.`);
  for (const { name, rows, sha256 } of manifest.tables) {
    const sum = found.get(`tables/${name}`);
    const hash = (sum?.hash ?? createHash("sha256")).digest("hex");
    if (hash !== sha256 || (sum?.rows ?? 0) !== rows)
      throw new HomeTrouble(
        `${file} is damaged: the table ${name} is not what its manifest says. Take another copy.`,
      );
  }
  for (const { name, sha256 } of manifest.files)
    if (found.get(`home/${name}`)?.hash.digest("hex") !== sha256)
      throw new HomeTrouble(
        `${file} is damaged: the file ${name} is not what its manifest says. Take another copy.`,
      );
  return manifest;
}

function placeOf(entry: TarEntry): string {
  const table = tableOf(entry);
  return table === undefined ? entry.name : `tables/${table}`;
}

function readManifest(file: string, content: Buffer): Manifest {
  try {
    return manifestShape.parse(JSON.parse(content.toString("utf8")));
  } catch {
    throw new HomeTrouble(
      `${file} was written by a later version of this software, or is damaged.`,
    );
  }
}

function notWhole(file: string, trouble: unknown): unknown {
  if (trouble instanceof DamagedArchive)
    return new HomeTrouble(`${file} is no whole backup: ${trouble.message}.`);
  const { code } = trouble as NodeJS.ErrnoException;
  if (code?.startsWith("Z_"))
    return new HomeTrouble(`${file} is no whole backup: it cannot be unpacked.`);
  if (code === "ENOENT") return new HomeTrouble(`There is no file ${file}.`);
  if (code === "EISDIR") return new HomeTrouble(`${file} is a folder; name the backup's file.`);
  return trouble;
}
