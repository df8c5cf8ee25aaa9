import type { RecordsReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** How many visits are in for a chair on a local day. */
export type ChairVisits = {
  readonly practice: string;
  readonly chair: string;
  /** YYYY-MM-DD; null for a chair without a visit in the period. */
  readonly day: string | null;
  readonly visits: number;
};

/** Every chair within the reach with its days of the period on which visits are in, by practice, chair and day. */
export async function coverage(
  reach: RecordsReach,
  period: Period,
  practice: string | undefined,
): Promise<ChairVisits[]> {
  const { rows } = await pool().query<ChairVisits>(
    `select c.practice, c.code as chair, v.local_day::text as day, count(v.id)::int as visits
     from chairs c left join sessions v on v.practice = c.practice and v.chair = c.code
       and v.local_day >= $2::date and v.local_day < $3::date
     where ($1::text[] is null or c.practice = any($1)) and ($4::text is null or c.practice = $4)
     group by c.practice, c.code, v.local_day order by 1, 2, 3`,
    [reach.practices, period.from, period.until, practice ?? null],
  );
  return rows;
}
