import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** An upkeep row of a day; the device is empty where the chair has but one. */
export type UpkeepDevice = {
  readonly device: string;
  readonly status: "done" | "not-done" | "out-of-service";
  /** Seconds; null where it is not recorded. */
  readonly durationS: number | null;
};

/** A chair and day on which the chair was in use, or on which a row of the task was written all the same. */
export type UpkeepDay = {
  readonly practice: string;
  readonly chair: string;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  /** A visit with a continuous delivery started in the chair: the chair's line carried irrigant. */
  readonly inUse: boolean;
  /** The rows of the task, one a device, in the order of the devices; none where there is no record. */
  readonly devices: readonly UpkeepDevice[];
};

/** Every chair and day in use, or with a row of the task, in the period; by practice, chair and day. */
export async function upkeepDays(
  reach: FiguresReach,
  period: Period,
  task: string,
): Promise<UpkeepDay[]> {
  const { rows } = await pool().query<UpkeepDay>(
    `with used as (
       select distinct practice, chair, local_day as day from visit_facts
       where continuous and ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
     ), kept as (
       select practice, chair, day,
         jsonb_agg(jsonb_build_object('device', device, 'status', status, 'durationS', duration_s) order by device) as devices
       from upkeep where task = $4 and ($1::text[] is null or practice = any($1)) and day >= $2::date and day < $3::date
       group by practice, chair, day
     )
     select practice, chair, day::text as day, u.on_day is not null as "inUse", coalesce(k.devices, '[]') as devices
     from (select practice, chair, day as on_day, day from used) u full join kept k using (practice, chair, day) order by 1, 2, 3`,
    [reach.practices, period.from, period.until, task],
  );
  return rows;
}

/** The tasks that rows of the period name, by code. */
export async function upkeepTasks(reach: FiguresReach, period: Period): Promise<string[]> {
  const { rows } = await pool().query<{ task: string }>(
    `select distinct task from upkeep where ($1::text[] is null or practice = any($1)) and day >= $2::date and day < $3::date order by task`,
    [reach.practices, period.from, period.until],
  );
  return rows.map(({ task }) => task);
}

/** The first and last local day on which each practice wrote a task down, whatever the period. */
export async function upkeepSpans(
  reach: FiguresReach,
  task: string,
): Promise<
  readonly { readonly practice: string; readonly first: string; readonly last: string }[]
> {
  const { rows } = await pool().query<{ practice: string; first: string; last: string }>(
    `select practice, min(day)::text as first, max(day)::text as last from upkeep
     where task = $2 and ($1::text[] is null or practice = any($1)) group by practice`,
    [reach.practices, task],
  );
  return rows;
}
