import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { noteNumbers } from "./held-numbers";
import { heldVerdicts } from "./held-verdicts";
import { storedKey } from "./stored-columns";

/**
 * Held rows that are accepted now, or repeat what is: held no longer; the counts of every file that bears them follow. One that a mend
 * has changed stays as `mended`, with the places that it let in, so that the mend can be taken back.
 */
export async function settleHeld(client: pg.ClientBase, table: TableName) {
  await noteNumbers(client);
  const match = storedKey(table).map((name) => `e."${name}" = j."${name}"`);
  await client.query(`
    update judged_${table} j set row_id = e.id from "${table}" e
    where j.verdict = 'new' and j.held_id is not null and ${match.join(" and ")}`);
  await client.query(`
    with settled as (
      select h.id, h.mend_id, h.file_id, h.line, j.row_id, j.fields, case j.verdict when 'repeated' then 'repeated' else 'accepted' end as as
      from held h join judged_${table} j on j.held_id = h.id and j.verdict not in ${heldVerdicts}
    ), seen_again as (
      update witnesses w set table_name = '${table}', row_id = s.row_id, fields = s.fields
      from settled s where w.table_name = 'held' and w.row_id = s.id returning s.id, w.file_id, w.line
    ), places as (
      select id, file_id, line, s.as from settled s union all select id, file_id, line, 'repeated' from seen_again
    ), gone as (
      delete from held h using settled s where h.id = s.id and s.mend_id is null returning h.id, h.table_name, h.file_id, h.line
    ), numbered as (
      insert into numbers_before select id, table_name, file_id, line from gone
    ), mended as (
      update held h set state = 'mended', settled_by = m.by, settled_at = now()
      from settled s join mends m on m.id = s.mend_id where h.id = s.id
    ), noted as (
      update mended_rows r set places = (
        select jsonb_agg(jsonb_build_object('file', p.file_id, 'line', p.line, 'as', p.as)) from places p where p.id = s.id)
      from settled s where r.held_id = s.id and r.mend_id = s.mend_id
    )
    update import_files f set held = f.held - c.rows, repeated = f.repeated + c.repeated, accepted = f.accepted + c.rows - c.repeated
    from (
      select file_id, count(*) as rows, count(*) filter (where p.as = 'repeated') as repeated from places p group by file_id
    ) c where c.file_id = f.id`);
}
