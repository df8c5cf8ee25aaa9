import { mustCover } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";
import { asHolder } from "../wall/as-whom";

/**
 * Renames a practice and sets its time zone, and so confirms it.
 *
 * @returns done, or why not: "unknown" code, or "has-visits" where another zone would put visits on other days
 */
export async function changePracticeWithin(
  reach: PeopleReach,
  code: string,
  to: { readonly name: string; readonly zone: string },
): Promise<"done" | "unknown" | "has-visits"> {
  mustCover(reach, code);
  // Past the wall: an administrator sees no visit, and whether there is one decides.
  return asHolder(() => changed(code, to));
}

function changed(
  code: string,
  to: { readonly name: string; readonly zone: string },
): Promise<"done" | "unknown" | "has-visits"> {
  return prisma().$transaction(async (tx) => {
    // The row is locked first: an import that publishes into this practice meanwhile refers to it.
    await tx.$queryRaw`select 1 from practices where code = ${code} for update`;
    const row = await tx.practice.findFirst({ where: { code } });
    if (!row) return "unknown";
    const moves = row.zone !== to.zone;
    if (moves && (await tx.visit.findFirst({ where: { practice: code } }))) return "has-visits";
    await tx.practice.update({ where: { code }, data: { ...to, confirmed: true } });
    return "done";
  });
}
