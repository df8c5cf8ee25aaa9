import { actNames } from "./acts";
import { type Ground, type Outcome, tried } from "./ground";

const hour = 3_600_000;

/** The clock of the process that acts jumps back in the middle: by an hour, by three days. PostgreSQL's goes on. */
export async function clocksSetBack(on: Ground, points: number): Promise<Outcome> {
  const came: string[] = [];
  const troubles: string[] = [];
  for (const point of on.here(points)) {
    const name = actNames[point % actNames.length] ?? "import";
    const back = point % 2 === 0 ? 72 * hour : hour;
    const one = await tried(on, name, async (process, { url, took }) => {
      const jump = { back, after: Math.round(on.random() * took) };
      process.go({ name, stage: on.base.stage, url, jump });
      return process.ended;
    });
    came.push(one.came);
    troubles.push(...one.troubles);
    if (one.came !== "answered") troubles.push(`${name} fails when the clock is set back`);
  }
  return { what: "clock set back in the middle", points: came.length, came, troubles };
}
