import { randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { HomeTrouble } from "./home-trouble";
import { markLives, processMark } from "./process-mark";

/**
 * Runs `work` while no other process runs work under the same lock file. A lock left by a process that
 * died is taken over.
 * @param patience milliseconds to wait for another holder before giving up with a HomeTrouble.
 */
export async function withLock<T>(
  file: string,
  work: () => Promise<T>,
  patience = 300_000,
): Promise<T> {
  const until = Date.now() + patience;
  while (!(await takeLock(file))) {
    if (Date.now() > until) {
      throw new HomeTrouble(
        `Another process has held ${file} for ${patience / 1000} seconds: wait for it or stop it.`,
      );
    }
    await sleep(40);
  }
  try {
    return await work();
  } finally {
    await rm(file, { force: true });
  }
}

/**
 * Takes the lock file for this process, without waiting.
 * @param note kept after the mark, for whoever asks who holds it.
 * @returns false where a living process holds it.
 */
export async function takeLock(file: string, note = ""): Promise<boolean> {
  await mkdir(dirname(file), { recursive: true });
  try {
    await writeFile(file, `${processMark(process.pid)}\n${note}`, { flag: "wx" });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
  const held = await readFile(file, "utf8").catch(() => null);
  if (held === null || (await holds(file, held))) return false;
  // Two takers may both see a dead holder: each moves what it saw aside under a name of its own, and only
  // the one whose move still finds the dead holder's words goes on; a living lock moved by mistake is put back.
  const aside = `${file}.${randomBytes(6).toString("hex")}`;
  try {
    await rename(file, aside);
  } catch {
    return false;
  }
  const moved = await readFile(aside, "utf8").catch(() => held);
  if (moved !== held) {
    await writeFile(file, moved, { flag: "wx" }).catch(() => {});
  }
  await rm(aside, { force: true });
  return false;
}

/** Who holds the lock: the living holder's process number and note, or null. */
export async function lockHolder(file: string): Promise<{ pid: number; note: string } | null> {
  const held = await readFile(file, "utf8").catch(() => null);
  if (held === null || !(await holds(file, held))) return null;
  const [mark = "", note = ""] = held.split("\n");
  return { pid: Number.parseInt(mark, 10), note };
}

/** A file still without a mark is being written, unless it has been so for seconds: then its writer died. */
async function holds(file: string, held: string): Promise<boolean> {
  const [mark = ""] = held.split("\n");
  if (held.includes("\n")) return markLives(mark);
  const made = await stat(file).catch(() => null);
  return made !== null && Date.now() - made.mtimeMs < 5_000;
}
