import type { FiguresReach, OwnReach, PeopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { prisma } from "../database";

/** From which share of chance figures are flagged, why, and who said so when. */
export type ChosenLevels = {
  readonly look: number;
  readonly lookFirst: number;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
};

/** The levels chosen, the latest first; the first is in force. None as long as nobody has chosen any. */
export async function chosenLevels(
  _reach: FiguresReach | OwnReach | PeopleReach,
): Promise<ChosenLevels[]> {
  const select = { look: true, lookFirst: true, reason: true, by: true, at: true };
  return prisma().flagLevel.findMany({ orderBy: { id: "desc" }, select });
}

/** Puts other levels in force; the earlier ones are kept. They hold for every practice. @throws Refused */
export async function chooseLevels(
  reach: PeopleReach,
  chosen: Pick<ChosenLevels, "look" | "lookFirst" | "reason">,
): Promise<void> {
  if (reach.practices !== null)
    throw new Refused(
      "The levels hold for every practice: only an administrator of all practices may change them.",
    );
  await prisma().flagLevel.create({ data: { ...chosen, by: reach.by } });
}
