import { readFile, rename, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { z } from "zod";
import type { Source } from "./import-records";
import { uploadsFolder } from "./upload-folders";

/** What lies in an upload's folder beside its files: read again where the import was broken off. */
const namesFile = "names.json";

const form = z.object({
  names: z.array(z.object({ file: z.string().regex(/^\d+\.\w+$/), name: z.string() })),
  zone: z.string(),
  /** Whose upload it is: an account, or what acts without one. */
  person: z.string().optional(),
});
export type KeptUpload = z.infer<typeof form>;

/** Keeps which file has which name, and whose upload it is. */
export async function keepUpload(folder: string, kept: KeptUpload): Promise<void> {
  const file = join(folder, namesFile);
  await writeFile(`${file}.new`, JSON.stringify(kept), { mode: 0o600, flush: true });
  await rename(`${file}.new`, file);
}

/** What is kept of an upload, and its files that are still to be read; null where its folder is not here. */
export async function keptUpload(
  upload: string,
): Promise<{ folder: string; kept: KeptUpload; sources: Source[] } | null> {
  // A name is all that is taken from the database.
  const folder = join(uploadsFolder(), basename(upload));
  const text = await readFile(join(folder, namesFile), "utf8").catch(() => null);
  if (text === null) return null;
  const kept = form.parse(JSON.parse(text));
  const sources: Source[] = [];
  for (const { file, name } of kept.names) {
    const path = join(folder, file);
    // Those that wait for a mapping lie elsewhere by now.
    if (await stat(path).catch(() => null)) sources.push({ path, name });
  }
  return { folder, kept, sources };
}
