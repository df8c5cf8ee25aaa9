import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** Canals of the treatment population by how their volumes and times were arrived at. */
export type BasisShare = {
  readonly basis: string | null;
  readonly canals: number;
  readonly clinicians: number;
};

/** The most frequent first; null is not written down, or no delivery. */
export async function basisShares(reach: FiguresReach, period: Period): Promise<BasisShare[]> {
  const { rows } = await pool().query<BasisShare>(
    `select basis, count(*)::int as canals, count(distinct worker)::int as clinicians from canal_facts
     where exclusion is null and ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
     group by basis order by canals desc, basis`,
    [reach.practices, period.from, period.until],
  );
  return rows;
}
