import { spawn } from "node:child_process";
import { join } from "node:path";
import { projectFolder } from "@/lib/store/home/project-folder";
import type { ActName, Stage } from "./acts";

export type Order = {
  readonly name: ActName;
  readonly stage: Stage | null;
  readonly url: string;
  readonly jump?: { readonly back: number; readonly after: number };
};

/** What a process came to. */
export type Ended = {
  /** It had its answer: what it did must be there. */
  readonly acknowledged: boolean;
  /** Why it failed, where it told. */
  readonly failed: string | null;
  readonly took: number;
};

/** A process that waits to be told what to do (tests/faults/act-once). */
export type Worker = {
  readonly ready: Promise<void>;
  go(order: Order): void;
  readonly ended: Promise<Ended>;
  /** SIGKILL. */
  kill(): void;
};

export function worker(): Worker {
  const child = spawn(process.execPath, ["--import", "tsx", "tests/faults/act-once.ts"], {
    cwd: projectFolder,
    env: { ...process.env, TSX_TSCONFIG_PATH: join(projectFolder, "lib/command/tsconfig.json") },
    stdio: ["pipe", "pipe", "inherit"],
  });
  let said = "";
  let from = 0;
  let to = 0;
  child.stdin.on("error", () => undefined);
  const ready = new Promise<void>((resolve) => {
    child.stdout.on("data", (bytes: Buffer) => {
      said += bytes.toString();
      if (said.includes("ready\n")) resolve();
      if (/^(done|failed)/m.test(said)) to ||= performance.now();
    });
  });
  const ended = new Promise<Ended>((resolve) => {
    child.once("close", () =>
      resolve({
        acknowledged: /^done$/m.test(said),
        failed: /^failed: (.*)/m.exec(said)?.[1] ?? null,
        took: (to || performance.now()) - from,
      }),
    );
  });
  return {
    ready,
    ended,
    go(order) {
      from = performance.now();
      child.stdin.write(`${JSON.stringify(order)}\n`);
    },
    kill: () => child.kill("SIGKILL"),
  };
}

/** Processes that are made ready while something else is done. */
export function readyWorkers() {
  let next = worker();
  return {
    async take(): Promise<Worker> {
      const one = next;
      await one.ready;
      next = worker();
      return one;
    },
    async end(): Promise<void> {
      next.kill();
      await next.ended;
    },
  };
}
export type ReadyWorkers = ReturnType<typeof readyWorkers>;
