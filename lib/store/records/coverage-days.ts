import type { RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** What came of a chair on a local day with visits. */
export type ChairDay = {
  readonly practice: string;
  readonly chair: string;
  /** YYYY-MM-DD. */
  readonly day: string;
  readonly visits: number;
  /** Was any of them a first treatment or a retreatment that was not abandoned: of others there may be no logs. */
  readonly treated: boolean;
  /** Did any delivery of an irrigant come, any use of an instrument, any row of the chair's upkeep. */
  readonly deliveries: boolean;
  readonly instruments: boolean;
  readonly upkeep: boolean;
  /** Devices that its canals name. */
  readonly devices: readonly string[];
};

/** The days with visits of every chair within the reach, from one day to the one before another, by practice, chair and day. */
export async function coverageDays(
  reach: RecordsReach,
  span: { readonly from: string; readonly until: string },
  practice: string | undefined,
): Promise<ChairDay[]> {
  const { rows } = await pool().query<ChairDay>(
    `with treated as (
       select v.id, v.practice, v.chair, v.local_day as day,
         v.treatment in ('primary', 'retreatment') and v.outcome <> 'abandoned' as treated from sessions v
       where v.local_day >= $2::date and v.local_day < $3::date
         and ($1::text[] is null or v.practice = any($1)) and ($4::text is null or v.practice = $4)
     ), devices as (
       select s.practice, s.chair, s.day, array_agg(distinct c.device order by c.device) as devices
       from treated s join canals c on c.visit_id = s.id where c.device is not null group by 1, 2, 3
     )
     select s.practice, s.chair, s.day::text as day, count(*)::int as visits, bool_or(s.treated) as treated,
       bool_or(exists (select from irrigation i where i.visit_id = s.id)) as deliveries,
       bool_or(exists (select from instruments i where i.visit_id = s.id)) as instruments,
       exists (select from upkeep u where u.practice = s.practice and u.chair = s.chair and u.day = s.day) as upkeep,
       coalesce(d.devices, '{}') as devices
     from treated s left join devices d using (practice, chair, day)
     group by s.practice, s.chair, s.day, d.devices order by 1, 2, 3`,
    [reach.practices, span.from, span.until, practice ?? null],
  );
  return rows;
}

export type ChairKnown = {
  readonly practice: string;
  readonly chair: string;
  readonly zone: string;
};

/** Every chair within the reach, by practice and code. */
export async function chairsKnown(
  reach: RecordsReach,
  practice: string | undefined,
): Promise<ChairKnown[]> {
  const { rows } = await pool().query<ChairKnown>(
    `select c.practice, c.code as chair, p.zone from chairs c join practices p on p.code = c.practice
     where ($1::text[] is null or c.practice = any($1)) and ($2::text is null or c.practice = $2) order by 1, 2`,
    [reach.practices, practice ?? null],
  );
  return rows;
}

/** The first local day, YYYY-MM-DD, of each practice's records within the reach; of one without records there is none. */
export async function firstDays(reach: RecordsReach): Promise<ReadonlyMap<string, string>> {
  const { rows } = await pool().query<{ practice: string; day: string }>(
    `select practice, min(local_day)::text as day from sessions
     where $1::text[] is null or practice = any($1) group by practice`,
    [reach.practices],
  );
  return new Map(rows.map(({ practice, day }) => [practice, day]));
}
