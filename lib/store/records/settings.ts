import type { RecordsReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** Keeps the value the first time; afterwards answers what was kept. */
export async function keptSetting(
  _reach: RecordsReach,
  key: string,
  value: string,
): Promise<string> {
  const row = await prisma().setting.upsert({ where: { key }, create: { key, value }, update: {} });
  return row.value;
}
