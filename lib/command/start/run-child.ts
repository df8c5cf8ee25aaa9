import { type ChildProcess, spawn } from "node:child_process";
import { projectFolder } from "@/lib/store/home/project-folder";

/**
 * Given to every child: it ends when this process does, even by SIGKILL, since then the channel closes. Its
 * own children inherit the words but have another parent, and must keep their channels as they are.
 */
const ENDS_WITH_US = `data:text/javascript,${encodeURIComponent(
  `if(process.ppid===${process.pid}&&process.channel){process.on('disconnect',()=>process.exit(1));process.channel.unref()}`,
)}`;

/** A child of Node in a process group of its own, so that Ctrl-C reaches it through us and in order. */
export interface Child {
  /** Its exit code (1 where a signal ended it) and what it printed, when it is over. */
  over: Promise<{ code: number; said: string }>;
}

/**
 * Runs Node on these words in the project's folder.
 * @param stop ends the child with everything that it started; 10 s later by force.
 * @param onError told what it prints on its error stream, as it prints it.
 */
export function runChild(
  words: string[],
  env: Record<string, string>,
  stop: AbortSignal,
  onError?: (text: string) => void,
): Child {
  const child = spawn(process.execPath, ["--import", ENDS_WITH_US, ...words], {
    cwd: projectFolder,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
    stdio: ["ignore", "pipe", "pipe", "ipc"],
    detached: process.platform !== "win32",
  });
  let said = "";
  const hear = (text: string) => {
    said = (said + text).slice(-20_000);
  };
  child.stdout?.setEncoding("utf8").on("data", hear);
  child.stderr?.setEncoding("utf8").on("data", hear);
  if (onError) child.stderr?.on("data", onError);
  const end = () => endGroup(child);
  if (stop.aborted) end();
  else stop.addEventListener("abort", end, { once: true });
  const over = new Promise<{ code: number; said: string }>((resolve, reject) => {
    child.once("error", reject);
    child.once("close", (code) => {
      stop.removeEventListener("abort", end);
      resolve({ code: code ?? 1, said });
    });
  });
  return { over };
}

function endGroup(child: ChildProcess): void {
  signal(child, "SIGTERM");
  const force = setTimeout(() => signal(child, "SIGKILL"), 10_000);
  child.once("close", () => clearTimeout(force));
}

function signal(child: ChildProcess, name: NodeJS.Signals): void {
  if (child.pid === undefined) return;
  try {
    if (process.platform === "win32") child.kill(name);
    else process.kill(-child.pid, name);
  } catch {
    // It has ended meanwhile.
  }
}
