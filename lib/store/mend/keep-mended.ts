import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { visitsOfHeld } from "../import/visits-of-held";
import type { Mending } from "./mending";

/**
 * Writes the rows of the temporary table `mending` back into the held rows, to be judged with the next publishing, and keeps what they were
 * under a new act.
 *
 * @returns the act's number
 */
export async function keepMended(
  client: pg.ClientBase,
  reach: RecordsReach,
  { table, changes, reason, mapping }: Mending,
): Promise<number> {
  const { rows } = await client.query<{ id: number }>(
    `insert into mends (table_name, changes, rows, accepted, still_held, practices, reason, mapping, by)
     values ($1, $2, (select count(*) from mending), 0, 0, array(
       select distinct p from mending m join held h on h.id = m.held_id cross join lateral (values (h.practice), (m.practice)) n (p)
       where p is not null order by p), $3, $4, $5) returning id`,
    [table, JSON.stringify(changes), reason ?? null, mapping ?? null, reach.by],
  );
  const mendId = rows[0]?.id;
  if (mendId === undefined) throw new Error("an act on the bench has a number");
  await client.query(
    `insert into mended_rows (mend_id, held_id, before, places)
     select $1, h.id, jsonb_build_object('row', to_jsonb(h) - 'raw', 'cells', m.cells, 'made', m.made), '[]'
     from mending m join held h on h.id = m.held_id`,
    [mendId],
  );
  await touchHeld(client, "select held_id from mending");
  await client.query(
    `update held h set mend_id = $1, kind = case when m.good then 'mending' else 'check' end, values = m.values, practice = m.practice,
       session_id = m.session_id, canal = m.canal, key = m.key, reasons = coalesce(m.reasons, '[]')
     from mending m where m.held_id = h.id`,
    [mendId],
  );
  await touchHeld(client, "select held_id from mending");
  return mendId;
}

/** Notes the visits that held rows name. */
export async function touchHeld(client: pg.ClientBase, ids: string): Promise<void> {
  await client.query(`insert into touched ${visitsOfHeld(`h.id in (${ids})`)}`);
}
