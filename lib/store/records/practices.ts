import type { FiguresReach, PeopleReach, ProtocolReach, RecordsReach } from "@/lib/access/reach";
import { prisma } from "../database";

export type PracticeRow = {
  readonly code: string;
  readonly name: string;
  readonly zone: string;
  readonly confirmed: boolean;
};

/** The practices within a reach, by code. */
export async function practicesWithin(
  reach: FiguresReach | RecordsReach | PeopleReach | ProtocolReach,
): Promise<PracticeRow[]> {
  return prisma().practice.findMany({
    where: reach.practices === null ? {} : { code: { in: [...reach.practices] } },
    orderBy: { code: "asc" },
  });
}

/** The time zone of every practice: bringing rows in needs them all, whoever brings. */
export async function zonesOfPractices(_reach: RecordsReach): Promise<Map<string, string>> {
  const rows = await prisma().practice.findMany({ select: { code: true, zone: true } });
  return new Map(rows.map((row) => [row.code, row.zone]));
}
