import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { chairDays } from "../figures/criterion-sql";

/** What became of an upkeep task on a chair and day on which the chair's line carried irrigant. */
export type UpkeepDay = {
  readonly practice: string;
  readonly chair: string;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  /** null: no row. Several devices at the chair are one, as the criterion has them. */
  readonly status: "done" | "not-done" | "out-of-service" | null;
  /** Seconds; null where it was done without one. */
  readonly durationS: number | null;
};

/** Every chair and day with a continuous delivery in the period, by practice, chair and day. */
export async function upkeepDays(
  reach: FiguresReach,
  period: Period,
  task: string,
): Promise<UpkeepDay[]> {
  const { rows } = await pool().query<UpkeepDay>(
    `select u.practice, u.chair, u.local_day::text as day, u.status, u.duration_s as "durationS"
     from ${chairDays(task).replaceAll("{within}", within)} order by 1, 2, 3`,
    [reach.practices, period.from, period.until],
  );
  return rows;
}

const within =
  "($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date";
