import type pg from "pg";
import type { RecordsReach } from "@/lib/access/reach";
import { changing } from "../import/changing";
import { moveCounts } from "../import/move-counts";
import { dropUnusedPlaces } from "../import/places";
import { publish } from "../import/publish";
import { takeBack, UndoRefused } from "../import/take-back";
import { holdOrphans } from "./hold-orphans";
import { touchHeld } from "./keep-mended";

/**
 * Takes a mend back: what it let in goes out again (what another file bore too stays), rows that rest on it wait as they would have, and
 * the held rows are as before.
 *
 * @throws UndoRefused where it is not there to take back, or a later act or a correction rests on it
 */
export async function undoMend(reach: RecordsReach, id: number): Promise<void> {
  await changing(async (client) => {
    await refuse(client, reach, id);
    await client.query(`
      create temp table restoring on commit drop as
      select r.held_id, r.before -> 'row' as row, case when h.state = 'mended' then r.places else '[]' end as places
      from mended_rows r join held h on h.id = r.held_id where r.mend_id = ${Number(id)}`);
    await client.query("create temp table files_back (id int) on commit drop");
    await client.query(`
      create temp table lines_back on commit drop as
      select p.file as file_id, p.line, p.as, r.held_id from restoring r, jsonb_to_recordset(r.places) as p (file int, line int, "as" text)`);
    await noteCounts(client);
    await touchHeld(client, "select held_id from restoring");
    await takeBack(client, reach.practices, holdOrphans);
    await restore(client);
    await touchHeld(client, "select held_id from restoring");
    await client.query("update mended_rows set places = '[]' where mend_id = $1", [id]);
    await client.query("update mends set undone_by = $2, undone_at = now() where id = $1", [
      id,
      reach.by,
    ]);
    await publish(client, { zone: "UTC", practices: null, afterUndo: true });
    await dropUnusedPlaces(client);
  });
}

async function refuse(client: pg.ClientBase, reach: RecordsReach, id: number) {
  const found = await client.query(
    `select from mends where id = $1 and undone_at is null
       and ($2::text[] is null or (practices <@ $2 and (practices <> '{}' or by = $3))) for update`,
    [id, reach.practices, reach.by],
  );
  if (!found.rowCount)
    throw new UndoRefused("This is not there to take back, or is taken back already.");
  const { rows } = await client.query<{ state: string; mend: number | null; key: string }>(
    `select h.state, h.mend_id as mend, h.key from mended_rows r join held h on h.id = r.held_id
     where r.mend_id = $1 and (h.mend_id is distinct from $1 or h.state = 'corrected') limit 1`,
    [id],
  );
  const [later] = rows;
  if (later?.state === "corrected")
    throw new UndoRefused(
      `${later.key} was taken in place of an accepted row since; take that correction back first, on the page Corrections.`,
    );
  if (later)
    throw new UndoRefused(
      `${later.key} was mended again since; take act ${later.mend ?? ""} back first.`,
    );
}

/** What each place counts as now: where its row was held again by itself, as held. */
async function noteCounts(client: pg.ClientBase) {
  await client.query(`
    create temp table counted_now on commit drop as
    select b.file_id, b.line, coalesce(h.state, b.as) as was
    from lines_back b left join (
      select file_id, line, id, state from held where state in ('held', 'let-go')
      union all select w.file_id, w.line, o.id, o.state from witnesses w join held o on w.table_name = 'held' and o.id = w.row_id and o.state in ('held', 'let-go')
    ) h on h.file_id = b.file_id and h.line = b.line`);
}

/** The held rows as they were before the act; whether they are held or let go stays as it is. */
async function restore(client: pg.ClientBase) {
  await client.query(`
    update held h set kind = b.kind, practice = b.practice, session_id = b.session_id, canal = b.canal, key = b.key, values = b.values,
      reasons = b.reasons, mend_id = b.mend_id, state = case when h.state = 'mended' then 'held' else h.state end,
      settled_by = case when h.state <> 'mended' then h.settled_by end, settled_at = case when h.state <> 'mended' then h.settled_at end
    from restoring r cross join lateral jsonb_populate_record(null::held, r.row) b where h.id = r.held_id`);
  await client.query(`
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select 'held', b.held_id, b.file_id, b.line, 0 from lines_back b join held h on h.id = b.held_id
    where (b.file_id, b.line) <> (h.file_id, h.line) on conflict do nothing`);
  await moveCounts(client, "select file_id, was, 'held' as becomes from counted_now");
}
