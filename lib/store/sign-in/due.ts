import type { Due } from "@/lib/access/viewer";
import { prisma } from "@/lib/store/database";
import { isSecondFactorRequired, needsSecondFactor } from "./second-factor-rule";

/** What a person of these roles has to do before anything else; undefined where nothing is. */
export async function dueOf(userId: string, roles: readonly string[]): Promise<Due | undefined> {
  const user = await prisma().user.findFirst({
    where: { id: userId },
    select: { passwordPassedOn: true, twoFactorEnabled: true },
  });
  if (user?.passwordPassedOn) return "password";
  if (!needsSecondFactor(roles) || user?.twoFactorEnabled) return undefined;
  return (await isSecondFactorRequired()) ? "second factor" : undefined;
}
