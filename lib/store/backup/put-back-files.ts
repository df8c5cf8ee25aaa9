import { mkdir, open, rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { restorableName } from "./home-files";
import { entriesOf, homeFileOf } from "./read-backup";

/**
 * Puts the files that a checked backup brings into the home, each whole or not at all; what stands in a place is kept
 * beside it under another name.
 *
 * @param wanted names of them
 */
export async function putBackFiles(
  folder: string,
  backup: string,
  wanted: readonly string[],
): Promise<void> {
  if (wanted.length === 0) return;
  const names = new Set(wanted.filter((name) => restorableName.test(name)));
  const drafts = new Map<string, string>();
  for await (const entry of entriesOf(backup)) {
    const name = homeFileOf(entry);
    if (name === undefined || !names.has(name)) continue;
    const draft = join(folder, `${name}.restoring`);
    await mkdir(dirname(draft), { recursive: true, mode: 0o700 });
    if (!drafts.has(name)) await rm(draft, { force: true });
    drafts.set(name, draft);
    const file = await open(draft, "a", 0o600);
    try {
      await file.write(entry.content);
      await file.sync();
    } finally {
      await file.close();
    }
  }
  for (const [name, draft] of drafts) {
    const place = join(folder, name);
    if (await stat(place).catch(() => null))
      await rename(place, `${place}.before-${new Date().toISOString().replaceAll(/[:.]/g, "-")}`);
    await rename(draft, place);
  }
}
