import type { NotesReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** A person's own note on a period. */
export type OwnNote = { readonly text: string; readonly savedAt: Date };

/** The viewer's note on the period, or null. Nobody else's can be asked for. */
export async function ownNote(reach: NotesReach, period: string): Promise<OwnNote | null> {
  return prisma().note.findFirst({
    where: { userId: reach.userId, period },
    select: { text: true, savedAt: true },
  });
}

/** Keeps the viewer's note on the period; an empty text takes it away. */
export async function keepOwnNote(reach: NotesReach, period: string, text: string): Promise<void> {
  const { userId } = reach;
  if (text === "") {
    await prisma().note.deleteMany({ where: { userId, period } });
    return;
  }
  const savedAt = new Date();
  await prisma().note.upsert({
    where: { userId_period: { userId, period } },
    create: { userId, period, text, savedAt },
    update: { text, savedAt },
  });
}
