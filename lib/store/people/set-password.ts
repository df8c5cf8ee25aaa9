import { hashPassword } from "better-auth/crypto";
import type { PeopleReach } from "@/lib/access/reach";
import { changeWithin } from "./change-within";

/** Sets a password that is passed on, to be changed at the next sign-in, and ends every session of that person. Throws as changeWithin. */
export async function setPasswordWithin(
  reach: PeopleReach,
  userId: string,
  plain: string,
): Promise<void> {
  const password = await hashPassword(plain);
  await changeWithin(reach, userId, async (tx) => {
    await tx.account.updateMany({
      where: { userId, providerId: "credential" },
      data: { password },
    });
    await tx.user.update({ where: { id: userId }, data: { passwordPassedOn: true } });
    await tx.signIn.deleteMany({ where: { userId } });
  });
}
