import type { PeopleReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";

/** A code that records have used; unconfirmed until an administrator has looked at it. */
export type CodeRow = { readonly code: string; readonly confirmed: boolean };

/** A practice with its chairs and clinicians' codes. */
export type PlaceRow = {
  readonly code: string;
  readonly name: string;
  readonly zone: string;
  readonly confirmed: boolean;
  readonly chairs: readonly CodeRow[];
  readonly clinicians: readonly CodeRow[];
  readonly hasVisits: boolean;
};

/** The practices within the reach, by code. */
export async function placesWithin(reach: PeopleReach): Promise<PlaceRow[]> {
  const codes = { select: { code: true, confirmed: true }, orderBy: { code: "asc" } } as const;
  const rows = await prisma().practice.findMany({
    where: reach.practices === null ? {} : { code: { in: [...reach.practices] } },
    include: { chairs: codes, clinicians: codes, visits: { select: { id: true }, take: 1 } },
    orderBy: { code: "asc" },
  });
  return rows.map(({ visits, ...row }) => ({ ...row, hasVisits: visits.length > 0 }));
}
