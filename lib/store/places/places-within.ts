import type { PeopleReach } from "@/lib/access/reach";
import { pool, prisma } from "@/lib/store/database";
import { asHolder } from "../wall/as-whom";

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
};

/** The practices within the reach, by code. */
export function placesWithin(reach: PeopleReach): Promise<PlaceRow[]> {
  const codes = { select: { code: true, confirmed: true }, orderBy: { code: "asc" } } as const;
  return prisma().practice.findMany({
    where: reach.practices === null ? {} : { code: { in: [...reach.practices] } },
    include: { chairs: codes, clinicians: codes },
    orderBy: { code: "asc" },
  });
}

/**
 * The practices within the reach that have a visit, past the wall, as an administrator sees none of them; the library would fetch every visit to keep the
 * first of each.
 */
export function practicesWithVisits(reach: PeopleReach): Promise<ReadonlySet<string>> {
  return asHolder(() => found(reach));
}

async function found(reach: PeopleReach): Promise<ReadonlySet<string>> {
  const { rows } = await pool().query<{ code: string }>(
    `select code from practices p where ($1::text[] is null or code = any($1)) and (
       -- In an order that an index has: one of the last practices of a long table would be looked for through all of it.
       select true from sessions v where v.practice = p.code order by v.session_id limit 1
     )`,
    [reach.practices],
  );
  return new Set(rows.map(({ code }) => code));
}
