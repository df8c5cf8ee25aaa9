import type { FiguresReach } from "@/lib/access/reach";
import { prisma } from "../database";

/**
 * An id for a criterion of one's own: the wanted one, or with a number behind it where any practice of the group has it
 * already, so that figures of the group never add up two demands.
 */
export async function freeOwnId(_reach: FiguresReach, wanted: string): Promise<string> {
  const rows = await prisma().criterionVersion.findMany({
    where: { criterion: { startsWith: wanted } },
    distinct: ["criterion"],
    select: { criterion: true },
  });
  const taken = new Set(rows.map(({ criterion }) => criterion));
  if (!taken.has(wanted)) return wanted;
  let number = 2;
  while (taken.has(`${wanted}-${number}`)) number += 1;
  return `${wanted}-${number}`;
}
