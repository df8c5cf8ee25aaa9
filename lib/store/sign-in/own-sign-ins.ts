import type { NotesReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";
import { idleSeconds } from "./session-limits";

/** One session of one's own. */
export type OwnSignIn = {
  readonly id: string;
  readonly began: Date;
  readonly used: Date;
  /** What the browser said that it is. */
  readonly browser: string;
};

/** The sessions of one's own that still live, the latest first. */
export async function ownSignIns(reach: NotesReach): Promise<OwnSignIn[]> {
  const rows = await prisma().signIn.findMany({
    where: {
      userId: reach.userId,
      expiresAt: { gt: new Date() },
      updatedAt: { gt: new Date(Date.now() - idleSeconds * 1000) },
    },
    orderBy: { createdAt: "desc" },
  });
  return rows.map(({ id, createdAt, updatedAt, userAgent }) => ({
    ...{ id, began: createdAt, used: updatedAt, browser: userAgent ?? "" },
  }));
}

/** Ends one session of one's own, or all of them. @returns how many it were */
export async function endOwnSignIns(reach: NotesReach, id?: string): Promise<number> {
  const where = { userId: reach.userId, ...(id === undefined ? {} : { id }) };
  return (await prisma().signIn.deleteMany({ where })).count;
}
