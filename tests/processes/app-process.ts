import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { isAlive, parentOf } from "@/lib/store/home/process-mark";
import { projectFolder } from "@/lib/store/home/project-folder";

/** One process of the application, started as `npm start` does. */
export type AppProcess = {
  readonly port: number;
  /** What it said of trouble. */
  said(): string;
  /** SIGKILL to it and all it started. */
  kill(): Promise<void>;
  stop(): Promise<void>;
};

/** @param given by the environment: database, home, key, secret, and the address people come by */
export async function appProcess(
  port: number,
  given: Readonly<Record<string, string>>,
): Promise<AppProcess> {
  const { npm_lifecycle_event: _, NODE_ENV: __, VITEST: ___, ...env } = process.env;
  const child = spawn(process.execPath, ["--import", "tsx", "lib/command/start/start.ts"], {
    cwd: projectFolder,
    env: {
      ...env,
      ...given,
      ...{ PORT: String(port), HOST: "127.0.0.1", CANAL_AUDIT_DEMO: "no", NODE_ENV: "production" },
      TSX_TSCONFIG_PATH: join(projectFolder, "lib/command/tsconfig.json"),
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let trouble = "";
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    trouble = (trouble + text).slice(-5000);
  });
  const over = once(child, "exit");
  await untilReady(child, () => trouble);
  return {
    port,
    said: () => trouble,
    async kill() {
      const all = [...descendants(child.pid ?? 0), child.pid ?? 0];
      for (const pid of all) if (pid > 0 && isAlive(pid)) process.kill(pid, "SIGKILL");
      while (all.some(isAlive)) await sleep(10);
    },
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill("SIGTERM");
      await over;
    },
  };
}

function untilReady(child: ChildProcess, trouble: () => string): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = "";
    child.stdout?.setEncoding("utf8").on("data", (text: string) => {
      said += text;
      if (said.includes("Ctrl-C stops it.")) resolve();
    });
    child.once("exit", (code) =>
      reject(new Error(`a start ended with ${code}: ${said}${trouble()}`)),
    );
  });
}

function descendants(parent: number): number[] {
  const below = readdirSync("/proc")
    .map(Number)
    .filter((pid) => pid > 0 && parentOf(pid) === parent);
  return below.flatMap((pid) => [...descendants(pid), pid]);
}
