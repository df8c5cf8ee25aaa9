import type { NewLogLine } from "@/lib/records/log-line";
import { pool } from "../database";

/**
 * Adds lines to the log in one short transaction; `hourly` ones only where this hour has no line alike. Needs no reach: it
 * tells of the viewer. The lock is the trigger's own, taken first so that what stands there already is seen.
 */
export async function writeLines(lines: readonly NewLogLine[], hourly = false): Promise<void> {
  if (lines.length === 0) return;
  const client = await pool().connect();
  try {
    await client.query("begin");
    await client.query("select pg_advisory_xact_lock(20261105)");
    await client.query(
      `insert into public.log_lines (kind, person, what, about)
       select n.kind, n.person, n.what, n.about
       from unnest($1::text[], $2::text[], $3::text[], $4::text[]) with ordinality as n (kind, person, what, about, place)
       where not $5 or not exists (
         select 1 from public.log_lines o where o.person = n.person and o.at >= date_trunc('hour', clock_timestamp())
           and o.kind = n.kind and o.what = n.what and o.about = n.about)
       order by n.place`,
      [
        lines.map((line) => line.kind),
        lines.map((line) => line.person),
        lines.map((line) => line.what),
        lines.map((line) => line.about),
        hourly,
      ],
    );
    await client.query("commit");
  } catch (error) {
    await client.query("rollback").catch(() => undefined);
    throw error;
  } finally {
    client.release();
  }
}
