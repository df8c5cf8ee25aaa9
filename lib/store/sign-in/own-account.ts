import type { NotesReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";
import { isSecondFactorRequired, needsSecondFactor } from "./second-factor-rule";

/** How one's own second factor stands. */
export async function ownSecondFactor(
  reach: NotesReach,
): Promise<{ readonly on: boolean; readonly required: boolean }> {
  const user = await prisma().user.findFirstOrThrow({
    where: { id: reach.userId },
    select: { twoFactorEnabled: true, grants: { select: { role: true } } },
  });
  const needed = needsSecondFactor(user.grants.map(({ role }) => role));
  return { on: user.twoFactorEnabled, required: needed && (await isSecondFactorRequired()) };
}

/** The password is now one's own, and no longer one that another passed on. */
export async function passwordIsOwn(reach: NotesReach): Promise<void> {
  await prisma().user.update({
    where: { id: reach.userId },
    data: { passwordPassedOn: false },
  });
}
