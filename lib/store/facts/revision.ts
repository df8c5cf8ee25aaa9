import type pg from "pg";
import type { FiguresReach, OwnReach, RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** Raises the revision of the records, in the transaction that changes them. */
export async function raiseRevision(client: pg.ClientBase): Promise<void> {
  await client.query(`
    insert into settings (key, value) values ('revision of the records', '1')
    on conflict (key) do update set value = (settings.value::bigint + 1)::text`);
}

/** The revision of the records: what was computed at one revision holds as long as it is the same. */
export async function revision(_reach: FiguresReach | OwnReach | RecordsReach): Promise<string> {
  const { rows } = await pool().query<{ value: string }>(
    "select value from settings where key = 'revision of the records'",
  );
  return rows[0]?.value ?? "0";
}
