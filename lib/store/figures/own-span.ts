import type { OwnReach } from "@/lib/access/reach";
import { pool } from "../database";

/** The first and last day on which the clinician treated; null where there is none. */
export async function ownSpan(
  reach: OwnReach,
): Promise<{ readonly first: string | null; readonly last: string | null }> {
  const { rows } = await pool().query<{ first: string | null; last: string | null }>(
    `select min(local_day)::text as first, max(local_day)::text as last from (
       select local_day from canal_facts where worker = $1 union all select local_day from visit_facts where worker = $1
     ) own`,
    [reach.clinicianKey],
  );
  return rows[0] ?? { first: null, last: null };
}
