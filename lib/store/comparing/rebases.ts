import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { prisma } from "../database";

/** Whose line over time. */
export type Line = {
  readonly measure: string;
  readonly kind: "group" | "practice" | "clinician";
  /** The key of a practice or clinician; empty for the group. */
  readonly subject: string;
};

/** A month from which a line is judged by new limits, why, and who said so when. */
export type Rebase = {
  readonly id: number;
  /** YYYY-MM. */
  readonly month: string;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
};

/**
 * The rebases in force of a line, oldest month first. Those of the group are of all practices together: the whole of a
 * smaller reach is another line and has none.
 */
export async function rebasesOf(reach: FiguresReach | OwnReach, line: Line): Promise<Rebase[]> {
  if (line.kind === "group" && !isOfAll(reach)) return [];
  return prisma().rebase.findMany({
    where: { ...line, withdrawnAt: null },
    orderBy: [{ month: "asc" }, { id: "asc" }],
    select: { id: true, month: true, reason: true, by: true, at: true },
  });
}

/** Sets a rebase; one of the same month takes the place of an earlier one, which is kept as withdrawn. @throws Refused */
export async function rebase(
  reach: FiguresReach,
  line: Line,
  chosen: Pick<Rebase, "month" | "reason">,
): Promise<void> {
  requireMaySet(reach, line);
  await prisma().$transaction([
    prisma().rebase.updateMany({
      where: { ...line, month: chosen.month, withdrawnAt: null },
      data: { withdrawnAt: new Date(), withdrawnBy: reach.by },
    }),
    prisma().rebase.create({ data: { ...line, ...chosen, by: reach.by } }),
  ]);
}

/** Takes a rebase of the line back; it is kept as withdrawn. False where the line has none of that number. @throws Refused */
export async function withdrawRebase(
  reach: FiguresReach,
  line: Line,
  id: number,
): Promise<boolean> {
  requireMaySet(reach, line);
  const { count } = await prisma().rebase.updateMany({
    where: { id, ...line, withdrawnAt: null },
    data: { withdrawnAt: new Date(), withdrawnBy: reach.by },
  });
  return count > 0;
}

function requireMaySet(reach: FiguresReach, line: Line): void {
  if (!reach.byClinician) throw new Refused("Only a clinical lead may set limits anew.");
  if (line.kind === "group" && !isOfAll(reach))
    throw new Refused(
      "The line of all practices is not yours to set limits on: choose a practice or a clinician.",
    );
}

function isOfAll(reach: FiguresReach | OwnReach): boolean {
  return "practices" in reach && reach.practices === null;
}
