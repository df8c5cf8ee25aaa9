import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** Advisory locks of this class are held by the connections of running imports. */
export const runningImports = 20_261_125;

/** Another process goes on with the import already, or it was settled. */
export class TakenUp extends Error {
  override readonly name = "TakenUp";
}

/** Marks the import as running for as long as this connection lives. @returns false where another does */
export async function markRunning(client: pg.ClientBase, importId: number): Promise<boolean> {
  const { rows } = await client.query<{ mine: boolean }>(
    "select pg_try_advisory_lock($1, $2) as mine",
    [runningImports, importId],
  );
  return rows[0]?.mine === true;
}

/** An import that ended so many processes is left to be looked at: its page still offers to go on. */
const mostTries = 3;

/** Who goes on with an import that was broken off: somebody who asked, or a process by itself. */
export type Again = { readonly importId: number; readonly asked: boolean };

/** Begins an import anew that was broken off, under its own number; whoever does it is marked as running it. @returns false where there is nothing to begin */
export async function beginAgain(
  { importId, asked }: Again,
  upload: string | null,
): Promise<boolean> {
  const { rowCount } = await pool().query(
    `with again as (
       update imports set state = 'reading', started_at = now(), finished_at = null, message = null, rows_read = 0, held_so_far = 0, cancel = false,
         tries = case when $3 then 0 else tries + 1 end
       where id = $1 and state = 'failed' and upload = $2 returning id),
     gone as (delete from import_files f using again a where f.import_id = a.id)
     select from again`,
    [importId, upload, asked],
  );
  return rowCount === 1;
}

/** Uploads of imports that were broken off: whoever has their files can go on, if not for ever. */
export async function brokenOffUploads(
  _reach: RecordsReach,
): Promise<{ readonly id: number; readonly upload: string }[]> {
  await closeBrokenOff();
  const { rows } = await pool().query<{ id: number; upload: string }>(
    "select id, upload from imports where state = 'failed' and upload is not null and tries < $1 order by id",
    [mostTries],
  );
  return rows;
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
