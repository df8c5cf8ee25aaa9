import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { renewFacts } from "../facts/renew-facts";
import { changing } from "./changing";
import { heldWithin } from "./imports";
import { publish } from "./publish";
import { visitsOfHeld } from "./visits-of-held";

/**
 * Drops held rows, with a reason, under the name of whoever does it: they hold their canals back no longer. The
 * counts of every file that bears them follow.
 *
 * @returns how many were let go; those settled meanwhile or out of reach are not among them
 */
export async function letGo(
  reach: RecordsReach,
  ids: readonly string[],
  reason: string,
): Promise<number> {
  return changing(async (client) => {
    const { rows } = await client.query<{ id: string }>(
      `update held h set state = 'let-go', settled_by = $3, settled_at = now(), settled_reason = $4
       where h.id = any($1) and h.state = 'held' and ${heldWithin(2)} returning h.id::text`,
      [ids, reach.practices, reach.by, reason],
    );
    const done = rows.map((row) => row.id);
    await recount(client, done, -1);
    await touch(client, done);
    await renewFacts(client);
    return done.length;
  });
}

/**
 * Takes rows back that were let go: they are held as before, and one whose parent has arrived meanwhile is accepted.
 *
 * @returns how many were taken back
 */
export async function takeBackLetGo(reach: RecordsReach, ids: readonly string[]): Promise<number> {
  return changing(async (client) => {
    const { rows } = await client.query<{ id: string }>(
      `update held h set state = 'held', settled_by = null, settled_at = null, settled_reason = null
       where h.id = any($1) and h.state = 'let-go' and ${heldWithin(2)} returning h.id::text`,
      [ids, reach.practices],
    );
    const done = rows.map((row) => row.id);
    await recount(client, done, 1);
    await touch(client, done);
    await publish(client, { zone: "UTC", practices: null });
    return done.length;
  });
}

/** Moves each place where a row was read between the file's held (1) and let go (−1). */
async function recount(client: pg.ClientBase, ids: readonly string[], toHeld: 1 | -1) {
  await client.query(
    `update import_files f set held = f.held + $2 * n.rows, let_go = f.let_go - $2 * n.rows
     from (
       select file_id, count(*)::int as rows from (
         select file_id from held where id = any($1)
         union all select file_id from witnesses where table_name = 'held' and row_id = any($1)
       ) places group by file_id
     ) n where n.file_id = f.id`,
    [ids, toHeld],
  );
}

async function touch(client: pg.ClientBase, ids: readonly string[]) {
  await client.query(`insert into touched ${visitsOfHeld("h.id = any($1)")}`, [ids]);
}
