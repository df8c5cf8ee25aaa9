import { randomBytes } from "node:crypto";
import { chmod, link, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";

/**
 * The text of a secret kept in the home with mode 0600. Made from `make` the first time, whole or not at
 * all, and never again: of two processes that make it at once both read the one that was first.
 */
export async function secretFile(
  folder: string,
  name: string,
  make: () => string = () => randomBytes(32).toString("hex"),
): Promise<string> {
  const file = join(folder, name);
  const kept = await readSecret(file);
  if (kept !== null) return kept;
  const draft = `${file}.${randomBytes(6).toString("hex")}`;
  await writeFile(draft, `${make()}\n`, { mode: 0o600, flush: true });
  try {
    await link(draft, file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    // Some file systems know no hard links; there the last one to rename wins, and both read it below.
    if (code !== "EEXIST") await rename(draft, file);
  } finally {
    await rm(draft, { force: true });
  }
  return (await readSecret(file)) ?? "";
}

/** The secret's text, or null where there is none; others' permissions on it are taken away. */
export async function readSecret(file: string): Promise<string | null> {
  const found = await stat(file).catch(() => null);
  if (!found) return null;
  if (process.platform !== "win32" && (found.mode & 0o077) !== 0) await chmod(file, 0o600);
  return (await readFile(file, "utf8")).trim();
}
