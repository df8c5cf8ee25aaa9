import type { RecordsReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** Keeps the value the first time; afterwards answers what was kept. */
export async function keptSetting(
  _reach: RecordsReach,
  key: string,
  value: string,
): Promise<string> {
  // Of two who are first at once, one keeps its own and both are answered that; later ones write nothing.
  const found = await prisma().setting.findFirst({ where: { key } });
  if (found) return found.value;
  await prisma().setting.createMany({ data: [{ key, value }], skipDuplicates: true });
  return (await prisma().setting.findFirstOrThrow({ where: { key } })).value;
}
