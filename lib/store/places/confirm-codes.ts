import { mustCover } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";

/** Confirms codes that imports created. @returns how many were unconfirmed until now */
export async function confirmCodesWithin(
  reach: PeopleReach,
  practice: string,
  kind: "chair" | "clinician",
  codes: readonly string[],
): Promise<number> {
  mustCover(reach, practice);
  const those = { where: { practice, code: { in: [...codes] }, confirmed: false } };
  const data = { confirmed: true };
  const { count } =
    kind === "chair"
      ? await prisma().chair.updateMany({ ...those, data })
      : await prisma().clinician.updateMany({ ...those, data });
  return count;
}
