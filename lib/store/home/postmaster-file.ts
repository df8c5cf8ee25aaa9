import { readFile, readlink, realpath, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { isAlive } from "./process-mark";

/** What a running server says of itself in its data folder. */
export interface Postmaster {
  pid: number;
  port: number;
  ready: boolean;
}

/** A number that no process has (beyond Linux's largest, 4,194,304). */
const NOBODY = 2_000_000_000;

/**
 * Reads `postmaster.pid` (its lines: process, data folder, start, port, socket folder, address, shared
 * memory, state; PostgreSQL 18, src/include/utils/pidfile.h).
 * @returns null without a living server of this folder: also where the number is somebody else's, as in a
 * copied home or after a restart.
 */
export async function readPostmaster(data: string): Promise<Postmaster | null> {
  const text = await readFile(join(data, FILE), "utf8").catch(() => null);
  if (text === null) return null;
  const lines = text.split("\n").map((line) => line.trim());
  const pid = Number(lines[0]);
  if (!(pid > 0) || !isAlive(pid) || !(await servesFolder(pid, data, lines[1] ?? ""))) return null;
  return { pid, port: Number(lines[3]), ready: lines[7] === "ready" };
}

/**
 * Lets a server start although the file names a process that lives but is not ours, or is dead and not
 * waited for: PostgreSQL refuses by the number alone. The rest of the file stays, since by it PostgreSQL
 * knows helpers of the killed server that still write. Only where `readPostmaster` answered null.
 */
export async function disownPostmaster(data: string): Promise<void> {
  const file = join(data, FILE);
  const text = await readFile(file, "utf8").catch(() => null);
  if (text !== null) await writeFile(file, text.replace(/^\s*-?\d+/, String(NOBODY)));
}

const FILE = "postmaster.pid";

/** The server works in its data folder; where the system does not show that, its own word must do. */
async function servesFolder(pid: number, data: string, told: string): Promise<boolean> {
  const ours = await realpath(data);
  const works = await readlink(`/proc/${pid}/cwd`).catch(() => null);
  return works === null ? (await realpath(told).catch(() => told)) === ours : works === ours;
}
