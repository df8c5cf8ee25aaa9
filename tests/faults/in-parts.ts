import { fork } from "node:child_process";
import { join } from "node:path";
import { projectFolder } from "@/lib/store/home/project-folder";
import type { Points } from "./all-faults";
import type { Outcome } from "./ground";

/** Tries every fault in so many processes at the same time, each with a server of its own, and adds up what came of each. */
export async function inParts(
  of: number,
  points: Points,
  visits: number,
  seed: number,
): Promise<Outcome[]> {
  const all = await Promise.all(
    [...Array(of).keys()].map((part) => one({ points, visits, seed, part: { part, of } })),
  );
  const sums = new Map<string, Outcome>();
  for (const { what, points, came, troubles } of all.flat()) {
    const sum = sums.get(what);
    sums.set(what, {
      what,
      points: (sum?.points ?? 0) + points,
      came: [...(sum?.came ?? []), ...came],
      troubles: [...(sum?.troubles ?? []), ...troubles],
    });
  }
  return [...sums.values()];
}

function one(order: object): Promise<Outcome[]> {
  const child = fork("tests/faults/part.ts", [JSON.stringify(order)], {
    ...{ cwd: projectFolder, execArgv: ["--import", "tsx"] },
    env: { ...process.env, TSX_TSCONFIG_PATH: join(projectFolder, "lib/command/tsconfig.json") },
  });
  const leave = () => child.kill("SIGTERM");
  process.once("exit", leave);
  return new Promise((resolve, reject) => {
    let found: Outcome[] | undefined;
    child.once("message", (outcomes: Outcome[]) => {
      found = outcomes;
    });
    child.once("error", reject);
    child.once("close", (code) => {
      process.off("exit", leave);
      if (found) resolve(found);
      else reject(new Error(`a part of the faults ended with ${code} and told nothing`));
    });
  });
}
