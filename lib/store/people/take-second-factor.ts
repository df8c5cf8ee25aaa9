import type { PeopleReach } from "@/lib/access/reach";
import { changeWithin } from "./change-within";

/** Takes a person's second factor away, as for a lost device, and ends every session of theirs. Throws as changeWithin. */
export async function takeSecondFactorWithin(reach: PeopleReach, userId: string): Promise<void> {
  await changeWithin(reach, userId, async (tx) => {
    await tx.twoFactor.deleteMany({ where: { userId } });
    await tx.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } });
    await tx.signIn.deleteMany({ where: { userId } });
  });
}
