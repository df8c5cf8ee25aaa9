import type { PeopleReach } from "@/lib/access/reach";
import type { Role } from "@/lib/access/role";
import { prisma } from "@/lib/store/database";

/** Who sees everybody's figures by name, or decides who sees what. */
const rolesThatNeedIt: readonly Role[] = ["administrator", "clinical-lead"];

/** Whether those roles must have a second factor. A home that says nothing of it requires it. */
export type SecondFactorRule = "required" | "not yet";

const key = "second factor";

export function needsSecondFactor(roles: readonly string[]): boolean {
  return rolesThatNeedIt.some((role) => roles.includes(role));
}

export async function isSecondFactorRequired(): Promise<boolean> {
  const row = await prisma().setting.findFirst({ where: { key } });
  return row?.value !== ("not yet" satisfies SecondFactorRule);
}

/** Sets it for the whole group; whoever asks must have made sure that the reach is over all of it. */
export async function keepSecondFactorRule(
  _reach: PeopleReach,
  value: SecondFactorRule,
): Promise<void> {
  await prisma().setting.upsert({ where: { key }, create: { key, value }, update: { value } });
}
