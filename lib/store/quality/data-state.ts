import type { FiguresReach, RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** Up to when records are in. */
export type DataState = {
  /** When the last import that still stands was published; null where there is none. */
  readonly published: Date | null;
  /** First and last local day with a visit, YYYY-MM-DD. */
  readonly firstDay: string | null;
  readonly lastDay: string | null;
};

/** The state of the records within a reach. */
export async function dataState(reach: FiguresReach | RecordsReach): Promise<DataState> {
  const { rows } = await pool().query<DataState>(
    `select (select max(finished_at) from imports
         where state = 'done' and ($1::text[] is null or practices && $1)) as published,
       min(local_day)::text as "firstDay", max(local_day)::text as "lastDay"
     from visit_facts where $1::text[] is null or practice = any($1)`,
    [reach.practices],
  );
  return rows[0] ?? { published: null, firstDay: null, lastDay: null };
}
