import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** Held rows that belong to a period, by the day of their visit or the day they name, and those that name none. */
export type HeldInPeriod = { readonly within: number; readonly withoutDay: number };

/** Held rows within the reach; one that names neither practice nor a known visit is seen with a reach over the group alone. */
export async function heldInPeriod(reach: FiguresReach, period: Period): Promise<HeldInPeriod> {
  const { rows } = await pool().query<HeldInPeriod>(
    `with placed as (
       select coalesce(s.local_day::text, substring(h.raw::text from '"(?:started_at|day)": *"(\\d{4}-\\d\\d-\\d\\d)')) as day
       from held h left join lateral (select local_day from sessions s where s.session_id = h.session_id
         and (h.practice is null or s.practice = h.practice) and ($1::text[] is null or s.practice = any($1)) limit 1) s on true
       where h.state = 'held' and ($1::text[] is null or h.practice = any($1) or (h.practice is null and s.local_day is not null))
     )
     select count(*) filter (where day >= $2 and day < $3)::int as within, count(*) filter (where day is null)::int as "withoutDay" from placed`,
    [reach.practices, period.from, period.until],
  );
  return rows[0] ?? { within: 0, withoutDay: 0 };
}
