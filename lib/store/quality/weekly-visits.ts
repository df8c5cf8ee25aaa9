import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** Visits of a chair in the week that starts on a Monday; a known chair without visits has one row with no week. */
export type WeekVisits = {
  readonly practice: string;
  readonly chair: string;
  /** Monday, YYYY-MM-DD; null where the chair has no visit in the period. */
  readonly monday: string | null;
  readonly visits: number;
};

/** Visits by chair and week, by practice, chair and week; every chair known within the reach is there. */
export async function weeklyVisits(reach: FiguresReach, period: Period): Promise<WeekVisits[]> {
  const { rows } = await pool().query<WeekVisits>(
    `with got as (
       select practice, chair, date_trunc('week', local_day)::date::text as monday, count(*)::int as visits
       from visit_facts where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
       group by practice, chair, monday
     ), known as (
       select practice, code as chair from chairs where $1::text[] is null or practice = any($1)
       union select practice, chair from got
     )
     select k.practice, k.chair, g.monday, coalesce(g.visits, 0) as visits
     from known k left join got g using (practice, chair) order by k.practice, k.chair, g.monday`,
    [reach.practices, period.from, period.until],
  );
  return rows;
}
