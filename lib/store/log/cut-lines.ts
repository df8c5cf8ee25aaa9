import pg from "pg";
import type { PeopleReach } from "@/lib/access/reach";
import { commandLine, cutThrough } from "@/lib/records/log-line";
import { pool } from "../database";
import { ofGroup } from "../retention/periods";

/** How many lines are older than the first day that is kept. */
export async function oldLines(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  const { rows } = await pool().query<{ n: number }>(
    "select count(*)::int as n from public.log_lines where at < $1::date",
    [from],
  );
  return rows[0]?.n ?? 0;
}

/**
 * Cuts the log before a day: a new line tells through which line it is cut and what its hash was, and then those lines go. The first line
 * that stays follows that hash, so the chain can be checked as before.
 *
 * @param owner address of the role that owns the log (lib/store/home/keep-log): nobody else can
 */
export async function cutLines(reach: PeopleReach, from: string, owner: string): Promise<number> {
  ofGroup(reach);
  const client = new pg.Client({ connectionString: owner });
  await client.connect();
  try {
    await client.query("begin");
    await client.query("select pg_advisory_xact_lock(20261105)");
    const { rows } = await client.query<{ id: number; hash: string }>(
      "select id::float8 as id, hash from public.log_lines where at < $1::date order by log_lines.id desc limit 1",
      [from],
    );
    const last = rows[0];
    if (!last) return 0;
    await client.query(
      "insert into public.log_lines (kind, person, what, about) values ('cut', $1, 'log', $2)",
      [commandLine, cutThrough(last.id, last.hash)],
    );
    await client.query("alter table public.log_lines disable trigger log_lines_stay");
    const gone = await client.query("delete from public.log_lines where id <= $1", [last.id]);
    await client.query("alter table public.log_lines enable trigger log_lines_stay");
    await client.query("commit");
    return gone.rowCount ?? 0;
  } finally {
    // What was not committed is rolled back with the connection.
    await client.end();
  }
}
