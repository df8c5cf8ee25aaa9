import { setTimeout as sleep } from "node:timers/promises";
import { actNames } from "./acts";
import { type Ground, type Outcome, tried } from "./ground";

const victims = ["the process", "PostgreSQL", "one process of PostgreSQL"] as const;

/** SIGKILL at random moments of every act in turn: of the process that acts, of the whole of PostgreSQL, of one of its processes. */
export async function kills(
  on: Ground,
  points: number,
  tell: (line: string) => void,
): Promise<Outcome[]> {
  const found = new Map<string, { came: string[]; troubles: string[] }>();
  for (const point of on.here(points)) {
    const name = actNames[point % actNames.length] ?? "import";
    const victim =
      victims[(point + Math.floor(point / actNames.length)) % victims.length] ?? "the process";
    const at = on.random();
    const { came, troubles } = await tried(on, name, async (one, { url, database, took }) => {
      one.go({ name, stage: on.base.stage, url });
      await sleep(at * took);
      if (victim === "the process") one.kill();
      else if (victim === "PostgreSQL") await on.server.kill();
      else await on.server.killBackend(database);
      return one.ended;
    });
    const what = `SIGKILL of ${victim}: ${name}`;
    tell(`${point + 1} of ${points}: ${what} after ${Math.round(at * 100)} %: ${came}`);
    const sum = found.get(what) ?? { came: [], troubles: [] };
    sum.came.push(came);
    sum.troubles.push(...troubles);
    found.set(what, sum);
  }
  return [...found].sort().map(([what, { came, troubles }]) => ({
    ...{ what, points: came.length, came, troubles },
  }));
}
