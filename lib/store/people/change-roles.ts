import { mustCover } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import type { Grant } from "@/lib/access/viewer";
import { changeWithin } from "./change-within";

/** Gives a person a role; one they have already is not given twice. Throws as changeWithin. */
export async function giveRoleWithin(
  reach: PeopleReach,
  userId: string,
  grant: Grant,
): Promise<void> {
  mustCover(reach, grant.practice);
  await changeWithin(reach, userId, async (tx) => {
    const has = await tx.grant.findFirst({ where: { userId, ...grant } });
    if (!has) await tx.grant.create({ data: { userId, ...grant } });
  });
}

/** Takes one role from a person. Throws as changeWithin. */
export async function takeRoleWithin(
  reach: PeopleReach,
  userId: string,
  grantId: number,
): Promise<void> {
  await changeWithin(reach, userId, async (tx) => {
    await tx.grant.deleteMany({ where: { id: grantId, userId } });
  });
}
