import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** A canal whose volume, flow and time cannot all be right, or whose continuous time exceeds its preparation time. */
export type DisagreeingCanal = {
  readonly practice: string;
  readonly sessionId: string;
  readonly canal: string;
  readonly tooth: string;
  /** Local day of the visit, YYYY-MM-DD. */
  readonly day: string;
  /** How many there are in all. */
  readonly all: number;
};

/** The latest of the canals that disagree by over a tenth, as the derived rows mark them. */
export async function disagreeingCanals(
  reach: FiguresReach,
  period: Period,
  limit: number,
): Promise<DisagreeingCanal[]> {
  const { rows } = await pool().query<DisagreeingCanal>(
    `select f.practice, v.session_id as "sessionId", f.canal, f.tooth, f.local_day::text as day, (count(*) over ())::int as all
     from canal_facts f join sessions v on v.id = f.visit_id
     where f.disagrees and ($1::text[] is null or f.practice = any($1)) and f.local_day >= $2::date and f.local_day < $3::date
     order by f.local_day desc, f.practice, v.session_id, f.canal limit $4`,
    [reach.practices, period.from, period.until, limit],
  );
  return rows;
}
