import { changingNights } from "./changing-nights";
import { clocksSetBack } from "./clock-set-back";
import { cutLines } from "./cut-line";
import { upgraded } from "./first-release";
import { fullDisk } from "./full-disk";
import { ground, type Outcome } from "./ground";
import { kills } from "./kills";
import { stoppedMigrations } from "./stopped-migration";
import { twiceAtOnce } from "./twice-at-once";

/** How many points of each are tried. */
export type Points = {
  readonly kills: number;
  readonly lines: number;
  readonly disks: number;
  readonly twice: number;
  readonly clocks: number;
  readonly migrations: number;
};

/** So many kills, and of the others in proportion. */
export function pointsOf(kills: number): Points {
  const part = (share: number) => Math.max(1, Math.round(kills * share));
  return {
    ...{ kills, lines: part(0.06), disks: part(0.06), twice: part(0.02) },
    ...{ clocks: part(0.06), migrations: part(0.05) },
  };
}

/** Tries every fault and hands back a line each. @param visits of each import, by which the acts take their time */
export async function allFaults(
  points: Points,
  visits: number,
  seed: number,
  tell: (line: string) => void = () => {},
): Promise<Outcome[]> {
  const on = await ground(visits, seed);
  const outcomes: Outcome[] = [];
  const add = (...some: Outcome[]) => {
    for (const one of some)
      tell(`${one.what}: ${one.came}${one.troubles.length > 0 ? ` — ${one.troubles[0]}` : ""}`);
    outcomes.push(...some);
  };
  try {
    add(await changingNights(on));
    add(await upgraded(on));
    if (points.migrations > 0) add(await stoppedMigrations(on, points.migrations));
    if (points.twice > 0) add(await twiceAtOnce(on, points.twice));
    if (points.clocks > 0) add(await clocksSetBack(on, points.clocks));
    if (points.lines > 0) add(await cutLines(on, points.lines));
    if (points.disks > 0) add(await fullDisk(on, points.disks));
    add(...(await kills(on, points.kills, tell)));
    return outcomes;
  } finally {
    await on.close();
  }
}
