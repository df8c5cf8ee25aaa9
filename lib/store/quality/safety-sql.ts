import { followUpsOf } from "./follow-ups-sql";

/**
 * SQL: common table expressions ending in `items`, every safety item of the visits in `visits` (visit_id, practice,
 * chair, local_day, patient, worker, clinician), one row each. `workers` are the keys of those whose work it was.
 *
 * - contact: hypochlorite and chlorhexidine that follow each other among the known deliveries without saline or water
 *   in between. By time where every delivery of the visit has one, else by seq within a canal; what is written for the
 *   whole tooth has no place among canals and is passed over.
 * - separation: the patient is not known to have been told, or what is to become of it is pending.
 * - incident: each one.
 */
export const safetyItems = `
meeting as (
  -- Few visits have both: only these are put in order. Each looks up its own, as the rest of the table is far larger.
  select v.visit_id, d.timed, d.of_canals
  from visits v cross join lateral (
    select bool_and(started_at is not null) as timed, bool_or(canal <> '') as of_canals, bool_or(irrigant = 'naocl') and bool_or(irrigant = 'chx') as both_there
    from irrigation i where i.visit_id = v.visit_id
  ) d where d.both_there
), placed as (
  select i.visit_id, m.timed, i.canal, i.seq, i.started_at, i.irrigant, lag(i.irrigant) over earlier as irrigant_before,
    lag(i.canal) over earlier as canal_before, lag(i.seq) over earlier as seq_before, lag(i.started_at) over earlier as started_before
  from meeting m cross join lateral (select * from irrigation d where d.visit_id = m.visit_id offset 0) i
  where i.irrigant in ('naocl', 'chx', 'saline', 'water') and (m.timed or i.canal <> '' or not m.of_canals)
  window earlier as (partition by i.visit_id, case when not m.timed then i.canal end
    order by case when m.timed then i.started_at end, i.canal, i.seq)
), contacts as (
  select v.*, p.timed, p.canal, p.seq, p.canal_before, p.seq_before, p.started_before, p.started_at, p.irrigant_before,
    array(select worker from canal_facts c where c.visit_id = p.visit_id and c.canal in (p.canal, p.canal_before)) || v.worker as workers
  from placed p join visits v using (visit_id)
  where (p.irrigant_before, p.irrigant) in (('naocl', 'chx'), ('chx', 'naocl'))
), separations as (
  select v.*, i.canal, i.seq, i.separated as events, i.third, i.fragment_mm, c.worker as canal_worker, c.clinician as canal_clinician,
    case when i.patient_told or u.told then true when not i.patient_told or not u.told then false end as told,
    coalesce(u.management, i.management) as management
  from visits v cross join lateral (select * from canal_facts f where f.visit_id = v.visit_id and f.separations > 0 offset 0) c
  join instruments i on i.visit_id = c.visit_id and i.canal = c.canal
  cross join lateral (${followUpsOf("i")}) u
  where i.separated > 0
), items as (
  select visit_id, practice, chair, local_day, patient, clinician, workers, 'contact' as what,
    case when timed then 'time' else 'seq' end as kind, canal, seq, 1 as events, null::boolean as told, null::boolean as reported,
    null::text as management, null::text as third, null::float8 as fragment_mm,
    jsonb_build_object('first', irrigant_before, 'canalBefore', canal_before, 'seqBefore', seq_before, 'startedBefore', started_before, 'startedAt', started_at) as met
  from contacts
  union all
  select visit_id, practice, chair, local_day, patient, canal_clinician, array[canal_worker], 'separation', '', canal, seq, events, told, null,
    management, third, fragment_mm, null
  from separations where told is not true or management = 'pending'
  union all
  select v.visit_id, practice, chair, local_day, patient, clinician, array[worker], 'incident', n.kind, '', null, 1, n.patient_told, n.reported, null, null, null, null
  from visits v join incidents n using (visit_id)
), marked as (
  -- Open: something is still to be done, or to be written down.
  select *, what = 'separation' and told is not true as untold, what = 'separation' and coalesce(management = 'pending', false) as pending,
    what = 'separation' or (what = 'incident' and (told is not true or reported is not true)) as open
  from items
)`;
