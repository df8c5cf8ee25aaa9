import type pg from "pg";
import { pool } from "../database";

/** Advisory locks of this class are held by the connections of running imports. */
export const runningImports = 20_261_125;

/** Marks the import as running for as long as this connection lives. */
export async function markRunning(client: pg.ClientBase, importId: number): Promise<void> {
  await client.query("select pg_advisory_lock($1, $2)", [runningImports, importId]);
}

/** Says of imports whose process ended in the middle that they were broken off; nothing of them is visible. */
export async function closeBrokenOff(): Promise<void> {
  await pool().query(
    `update imports i set state = 'failed', finished_at = now(),
       message = 'It was broken off before it was done, and nothing of it is kept.'
     where i.state in ('reading', 'publishing') and i.started_at < now() - interval '5 seconds'
       and not exists (select from pg_locks l where l.locktype = 'advisory' and l.classid = $1::oid and l.objid = i.id::oid)`,
    [runningImports],
  );
}
