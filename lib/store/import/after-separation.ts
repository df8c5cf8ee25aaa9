import type pg from "pg";
import { holdAccepted } from "./hold-accepted";

/**
 * Holds uses of an instrument after the one in which it separated, whichever of the two arrived first: a later
 * visit, or a higher number in the same canal. Of several, the first by time and number is named. Within a visit the order of canals is not known and nothing is held.
 *
 * @param instruments SQL giving the instrument_id of those to look at; without it the ones judged now
 */
export async function holdUsesAfterSeparation(
  client: pg.ClientBase,
  instruments = "select instrument_id from staged_instruments",
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
      and (v.started_at > s.started_at or (u.visit_id = parting.visit_id and u.canal = parting.canal and u.seq > parting.seq))
    order by u.id, s.started_at, s.session_id, s.id`);
  await holdAccepted(client, "parted", {
    table: "instruments",
    kind: "after-separation",
    digest: "instruments after separation",
    reasons,
    beside: ["separated_in"],
  });
  await client.query("drop table parted");
}

const reasons = `jsonb_build_array(jsonb_build_object('column', 'instrument_id', 'found', j.instrument_id,
  'remedy', format('it separated in visit %s and cannot have been used after that; correct one of the two at the source', j.separated_in),
  'sentence', format('%s, line %s, instrument_id: found "%s"; it separated in visit %s and cannot have been used after that; correct one of the two at the source.',
    i.name, j.line, j.instrument_id, j.separated_in)))`;
