import type { FiguresReach } from "@/lib/access/reach";
import { pool } from "../database";

/** Rows of a table that are held and count in no figure. */
export type HeldCount = { readonly table: string; readonly rows: number };

/**
 * Held rows by table. A row that names no practice belongs to those in which its visit is known; one that names
 * neither is seen with a reach over the whole group alone.
 */
export async function heldCount(reach: FiguresReach): Promise<HeldCount[]> {
  const { rows } = await pool().query<HeldCount>(
    `select table_name as table, count(*)::int as rows from held h
     where state = 'held' and ($1::text[] is null or practice = any($1) or (practice is null and exists
       (select 1 from sessions s where s.session_id = h.session_id and s.practice = any($1))))
     group by table_name order by table_name`,
    [reach.practices],
  );
  return rows;
}
