import type { PeopleReach } from "@/lib/access/reach";
import { changeWithin } from "./change-within";

/** Removes a person with their sessions, roles and private notes; records keep their codes. Throws as changeWithin. */
export async function removePersonWithin(reach: PeopleReach, userId: string): Promise<void> {
  await changeWithin(reach, userId, async (tx) => {
    await tx.user.delete({ where: { id: userId } });
  });
}
