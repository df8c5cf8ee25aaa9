import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";

/**
 * A living process told apart from a later one that was given the same number: "pid start". Containers
 * hand out the same few numbers after every restart, so the number alone proves nothing.
 * @returns null where no such process lives.
 */
export function processMark(pid: number): string | null {
  if (!isAlive(pid)) return null;
  const start = startOf(pid);
  return start === null ? null : `${pid} ${start}`;
}

/** Whether the process that left this mark still lives. */
export function markLives(mark: string): boolean {
  const pid = Number.parseInt(mark, 10);
  return pid > 0 && processMark(pid) === mark.trim();
}

/** Whether a process of this number lives, whoever owns it. A dead one that nobody has waited for is dead. */
export function isAlive(pid: number): boolean {
  if (process.platform === "linux") {
    const fields = statFields(pid);
    return fields !== null && fields[0] !== "Z";
  }
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** The number of a process's parent; 0 where the system does not say. */
export function parentOf(pid: number): number {
  if (process.platform === "linux") return Number(statFields(pid)?.[1] ?? 0);
  return Number(askPs("ppid=", pid) ?? 0);
}

/** proc(5): after the name, which stands in brackets and may hold anything, come state and numbers. */
function statFields(pid: number): string[] | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ");
  } catch {
    return null;
  }
}

function startOf(pid: number): string | null {
  // Field 22 of proc(5) is the start in clock ticks since boot; state is field 3.
  if (process.platform === "linux") return statFields(pid)?.[19] ?? null;
  return askPs("lstart=", pid)?.replaceAll(" ", "-") ?? null;
}

/** For systems without /proc; on Windows there is neither, and the number must do. */
function askPs(column: string, pid: number): string | null {
  if (process.platform === "win32") return column === "lstart=" ? "?" : null;
  try {
    return execFileSync("ps", ["-o", column, "-p", String(pid)], { encoding: "utf8" }).trim();
  } catch {
    return null;
  }
}
