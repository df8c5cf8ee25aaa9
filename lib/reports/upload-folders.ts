import { createHash, randomBytes } from "node:crypto";
import { readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { join } from "node:path";
import { homeFolder } from "@/lib/store/home/home-folder";

/** Where uploads lie until they are read. */
export function uploadsFolder(): string {
  return join(homeFolder(), "uploads");
}

/** A folder's name begins with the machine and the process that have it, so that what a dead one left behind is known. */
export function newUploadFolder(): string {
  return join(uploadsFolder(), `${machine()}-${process.pid}-${randomBytes(8).toString("hex")}`);
}

/** Where several machines share a home, a day after which what another of them left is nobody's. */
const longest = 24 * 3_600_000;

/** Deletes what a process that was killed could not, but for folders that an import still needs. */
export async function removeLeftovers(kept: readonly string[]): Promise<void> {
  for (const name of await readdir(uploadsFolder()).catch(() => [])) {
    if (kept.includes(name) || (await isSomebodys(name))) continue;
    await rm(join(uploadsFolder(), name), { recursive: true, force: true });
  }
}

async function isSomebodys(name: string): Promise<boolean> {
  const [where, pid] = name.split("-");
  if (where === machine()) return isRunning(Number(pid));
  const found = await stat(join(uploadsFolder(), name)).catch(() => null);
  return found !== null && Date.now() - found.mtimeMs < longest;
}

function machine(): string {
  return createHash("sha256").update(hostname()).digest("hex").slice(0, 8);
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
