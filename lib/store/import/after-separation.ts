import type pg from "pg";
import { asWritten } from "./relation-reasons";

/**
 * Holds uses of an instrument after the one in which it separated, whichever of the two arrived first: a later
 * visit, or a higher number in the same canal. Within a visit the order of canals is not known and nothing is held.
 *
 * @param instruments SQL giving the instrument_id of those to look at; without it the ones judged now
 */
export async function holdUsesAfterSeparation(
  client: pg.ClientBase,
  instruments = "select instrument_id from judged_instruments",
): Promise<void> {
  await client.query(`
    create temp table parted as
    select distinct on (u.id) u.*, v.practice, v.session_id, s.session_id as separated_in
    from instruments parting
    join sessions s on s.id = parting.visit_id
    join instruments u on u.instrument_id = parting.instrument_id and u.id <> parting.id
    join sessions v on v.id = u.visit_id and v.practice = s.practice
    where parting.separated > 0
      and parting.instrument_id in (${instruments})
      and (v.started_at > s.started_at or (u.visit_id = parting.visit_id and u.canal = parting.canal and u.seq > parting.seq))`);
  await client.query(`
    insert into held (table_name, digest, kind, practice, session_id, canal, key, raw, values, reasons, file_id, line)
    select 'instruments', md5('instruments after separation' || (${values})::text), 'after-separation', j.practice, j.session_id,
      j.canal, concat_ws(' ', j.session_id, j.canal, j.seq), ${asWritten("instruments")}, ${values},
      jsonb_build_array(jsonb_build_object('column', 'instrument_id', 'found', j.instrument_id,
        'remedy', format('it separated in visit %s and cannot have been used after that; correct one of the two at the source', j.separated_in),
        'sentence', format('%s, line %s, instrument_id: found "%s"; it separated in visit %s and cannot have been used after that; correct one of the two at the source.',
          i.name, j.line, j.instrument_id, j.separated_in))), j.file_id, j.line
    from parted j join import_files i on i.id = j.file_id on conflict (digest) do nothing`);
  await client.query(`
    update witnesses w set table_name = 'held', row_id = h.id
    from parted p join held h on h.file_id = p.file_id and h.line = p.line and h.kind = 'after-separation'
    where w.table_name = 'instruments' and w.row_id = p.id`);
  await client.query(`
    with gone as (delete from instruments i using parted p where i.id = p.id returning i.file_id)
    update import_files f set accepted = f.accepted - g.rows, held = f.held + g.rows
    from (select file_id, count(*) as rows from gone group by file_id) g where g.file_id = f.id`);
  await client.query("insert into touched select visit_id from parted");
  await client.query("drop table parted");
}

const values = `to_jsonb(j) - array['id','visit_id','separated_in','file_id','line']`;
