import { changingNights } from "./changing-nights";
import { clocksSetBack } from "./clock-set-back";
import { cutLines } from "./cut-line";
import { upgraded } from "./first-release";
import { upgradedFromItself } from "./first-release-itself";
import { fullDisk, limitedFiles } from "./full-disk";
import { counted, ground, type Outcome, type Part } from "./ground";
import { kills } from "./kills";
import { stoppedMigrations } from "./stopped-migration";
import { twiceAtOnce } from "./twice-at-once";

/** How many points of each are tried. */
export type Points = {
  readonly kills: number;
  readonly lines: number;
  readonly disks: number;
  /** With RLIMIT_FSIZE; the points of `disks` are added where nothing may be mounted. */
  readonly limits: number;
  readonly twice: number;
  readonly clocks: number;
  readonly migrations: number;
  /** Whether the first release's own code is run. */
  readonly first: boolean;
};

/** So many kills, and of the others in proportion. */
export function pointsOf(kills: number): Points {
  const part = (share: number) => Math.max(1, Math.round(kills * share));
  return {
    ...{ kills, lines: part(0.06), disks: part(0.06), limits: part(0.03), twice: part(0.02) },
    ...{ clocks: part(0.06), migrations: part(0.05), first: true },
  };
}

/** Tries every fault and hands back a line each. @param visits of each import, by which the acts take their time */
export async function allFaults(
  points: Points,
  visits: number,
  seed: number,
  tell: (line: string) => void = () => {},
  part?: Part,
): Promise<Outcome[]> {
  const on = await ground(visits, seed, part);
  const outcomes: Outcome[] = [];
  const add = (...some: Outcome[]) => {
    for (const one of some)
      tell(
        `${one.what}: ${counted(one.came)}${one.troubles.length > 0 ? ` — ${one.troubles[0]}` : ""}`,
      );
    outcomes.push(...some);
  };
  try {
    // What is tried once is tried by the first part.
    if (on.here(1).length > 0) {
      add(await changingNights(on));
      add(await upgraded(on));
      if (points.first) add(await upgradedFromItself(on));
    }
    if (points.migrations > 0) add(await stoppedMigrations(on, points.migrations));
    if (points.twice > 0) add(await twiceAtOnce(on, points.twice));
    if (points.clocks > 0) add(await clocksSetBack(on, points.clocks));
    if (points.lines > 0) add(await cutLines(on, points.lines));
    const onDisk = points.disks > 0 ? await fullDisk(on, points.disks) : null;
    if (onDisk) add(onDisk);
    const limits = points.limits + (onDisk ? 0 : points.disks);
    if (limits > 0) add(await limitedFiles(on, limits));
    add(...(await kills(on, points.kills, tell)));
    return outcomes;
  } finally {
    await on.close();
  }
}
