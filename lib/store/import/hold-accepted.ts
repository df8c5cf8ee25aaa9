import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { heldNumber, noteNumbers } from "./held-numbers";
import { moveCounts } from "./move-counts";
import { asWritten } from "./relation-reasons";
import { storedKey } from "./stored-columns";

/** Why accepted rows are held after all. */
export type HoldAccepted = {
  readonly table: TableName;
  readonly kind: "after-separation" | "waiting";
  /** What the digest is of, before the values. */
  readonly digest: string;
  /** SQL expression giving the reasons (jsonb) of row `j` of file `i`. */
  readonly reasons: string;
  /** Columns of `leaving` that are not the row's. */
  readonly beside?: readonly string[];
};

/**
 * Holds accepted rows of a visit after all, with all their places; their visits are noted in `touched`. What a mend had let in is
 * held again as it was mended.
 *
 * @param leaving temporary table: the rows whole, with practice (null where the row is to name none), session_id, and whatever
 * the reasons read
 */
export async function holdAccepted(
  client: pg.ClientBase,
  leaving: string,
  how: HoldAccepted,
): Promise<void> {
  const { rowCount } = await client.query(`select from ${leaving} limit 1`);
  if (!rowCount) return;
  await noteNumbers(client);
  await client.query(placesOf(leaving, how.table));
  await client.query(saidBy(leaving, how));
  await client.query(`
    update held h set state = 'held', kind = '${how.kind}', reasons = s.reasons, settled_by = null, settled_at = null,
      values = case when p.own then s.values else h.values end
    from places_leaving p join said s on s.id = p.id where p.mended_id = h.id`);
  await client.query(heldAlready(how));
  // A row let go or mended may have said the same: then the place tells them apart.
  await client.query(`
    with added as (
      insert into held (id, table_name, digest, kind, practice, session_id, canal, key, raw, values, reasons, file_id, line)
      select ${heldNumber(how.table)}, '${how.table}', case when exists (select from held o where o.digest = s.digest) then md5(s.digest || s.file_id || ' ' || s.line)
        else s.digest end, '${how.kind}', practice, session_id, canal, key, raw, values, reasons, file_id, line
      from said s where held_id is null returning id, file_id, line
    )
    update said s set held_id = a.id from added a where a.file_id = s.file_id and a.line = s.line`);
  await movePlaces(client, how.table);
  await moveCounts(
    client,
    "select file_id, case when new then 'accepted' else 'repeated' end as was, 'held' as becomes from places_leaving",
  );
  await client.query(`insert into touched select visit_id from ${leaving}`);
  await client.query(`delete from "${how.table}" t using ${leaving} l where t.id = l.id`);
  await client.query("drop table places_leaving, said");
}

/** Every place of the rows, whether it was new there, and the mended row that it is of. */
function placesOf(leaving: string, table: TableName): string {
  const borneBefore = `coalesce((select bit_or(o.fields) from witnesses o
    where o.table_name = '${table}' and o.row_id = l.id and (o.file_id, o.line) < (w.file_id, w.line)), 0)`;
  return `
    create temp table places_leaving as
    select p.*, h.id as mended_id from (
      select l.id, l.file_id, l.line, true as own, true as new from ${leaving} l
      union all
      select l.id, w.file_id, w.line, false, (w.fields & ~(l.fields | ${borneBefore})) <> 0
      from ${leaving} l join witnesses w on w.table_name = '${table}' and w.row_id = l.id
    ) p
    left join held h on h.table_name = '${table}' and h.state = 'mended' and h.file_id = p.file_id and h.line = p.line`;
}

function saidBy(leaving: string, { table, digest, reasons, beside = [] }: HoldAccepted): string {
  const key = storedKey(table).filter((name) => name !== "visit_id");
  const named = ["session_id", ...key].map((name) => `j."${name}"`);
  const values = `to_jsonb(j) - array[${["id", "visit_id", "file_id", "line", ...beside].map((name) => `'${name}'`)}]`;
  return `
    create temp table said as
    select j.id, j.file_id, j.line, j.practice, j.session_id, ${key.includes("canal") ? "j.canal" : "null::text as canal"},
      concat_ws(' ', ${named}) as key, ${asWritten(table)} as raw, ${values} as values, ${reasons} as reasons,
      md5('${digest}' || (${values})::text) as digest,
      (select p.mended_id from places_leaving p where p.id = j.id and p.own) as held_id, false as again
    from ${leaving} j join import_files i on i.id = j.file_id`;
}

/** A row that is brought again after it was held for the same reason is a further place of the held one. */
function heldAlready({ table, kind }: HoldAccepted): string {
  return `
    update said s set held_id = h.id, again = true from held h
    where s.held_id is null and '${kind}' = 'after-separation' and h.table_name = '${table}' and h.kind = '${kind}'
      and h.state = 'held' and h.key = s.key and h.values = s.values`;
}

/** What a mended row had let in stays with it; all other places go with the row. */
async function movePlaces(client: pg.ClientBase, table: TableName) {
  await client.query(`delete from witnesses w using places_leaving p
    where w.table_name = '${table}' and w.row_id = p.id and w.file_id = p.file_id and w.line = p.line`);
  await client.query(`
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select 'held', coalesce(m.held_id, s.held_id), p.file_id, p.line, 0
    from places_leaving p join said s on s.id = p.id
    left join lateral (
      select q.mended_id as held_id from places_leaving q
      join held h on h.id = q.mended_id join mended_rows r on r.mend_id = h.mend_id and r.held_id = h.id
      where q.id = p.id and r.places @> jsonb_build_array(jsonb_build_object('file', p.file_id, 'line', p.line)) limit 1
    ) m on true
    where p.mended_id is null and (not p.own or s.again) on conflict do nothing`);
  await client.query(`
    update mended_rows r set places = '[]' from places_leaving p join held h on h.id = p.mended_id
    where r.held_id = h.id and r.mend_id = h.mend_id`);
}
