import type { PeopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { type Retained, type Retention, retained } from "@/lib/records/retention";
import { prisma } from "../database";

const keyOf = (what: Retained) => `months kept: ${what}`;

/** How long what is kept; nothing is deleted where nothing is set. */
export async function retentionPeriods(reach: PeopleReach): Promise<Retention> {
  ofGroup(reach);
  const rows = await prisma().setting.findMany({ where: { key: { in: retained.map(keyOf) } } });
  return Object.fromEntries(
    retained.flatMap((what) => {
      const row = rows.find(({ key }) => key === keyOf(what));
      return row ? [[what, Number(row.value)]] : [];
    }),
  );
}

/** Sets how many months something is kept; null is for good. */
export async function setRetention(
  reach: PeopleReach,
  what: Retained,
  months: number | null,
): Promise<void> {
  ofGroup(reach);
  const key = keyOf(what);
  if (months === null) await prisma().setting.deleteMany({ where: { key } });
  else {
    const value = String(months);
    await prisma().setting.upsert({ where: { key }, create: { key, value }, update: { value } });
  }
}

/** @throws Refused where the reach is not the whole group's */
export function ofGroup(reach: PeopleReach): void {
  if (reach.practices !== null)
    throw new Refused("How long things are kept is for an administrator of the group.");
}
