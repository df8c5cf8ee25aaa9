import type { FiguresReach } from "@/lib/access/reach";
import { pool } from "../database";

/** The quarters in which there are visits or upkeep within the reach, oldest first, as 2026-Q3. */
export async function quartersWithRecords(reach: FiguresReach): Promise<string[]> {
  const { rows } = await pool().query<{ quarter: string }>(
    `select distinct to_char(day, 'YYYY-"Q"Q') as quarter from (
       select practice, local_day as day from visit_facts union all select practice, day from upkeep
     ) days where $1::text[] is null or practice = any($1) order by 1`,
    [reach.practices],
  );
  return rows.map(({ quarter }) => quarter);
}
