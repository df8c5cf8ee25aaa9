import { volume } from "../figures/criterion/delivery-sql";
import { heldRows } from "./canal-facts";
import { spellThen, worker } from "./spells";

/** SQL: what a motor drives. */
const powered = "'{oscillating,rotary,reciprocating}'::text[]";

/**
 * Inserts the derived row of every visit in `renewing`. The visit's volume adds what was written down for the whole
 * tooth to that of its canals, and is unknown when any delivery is unknown or held.
 */
export const visitFacts = `
with deliveries as (
  select i.visit_id, i.canal, i.seq, i.delivery, ${volume("c.timer_reset")} as volume_ml
  from renewing r join irrigation i using (visit_id) left join canals c on c.visit_id = i.visit_id and c.canal = i.canal
), sums as (
  select visit_id, bool_or(delivery = 'continuous') as continuous,
    case when count(volume_ml) = count(*) then sum(volume_ml order by canal, seq) end as volume_ml
  from deliveries group by visit_id
), uses as (
  select visit_id, sum(coalesce(uses, 1)) as uses, sum(coalesce(separated, 0)) as separations,
    coalesce(sum(coalesce(uses, 1)) filter (where separated is null), 0) as unknown, bool_or(kind = any(${powered})) as powered
  from renewing join instruments using (visit_id) group by visit_id
), prepared as (
  select visit_id, bool_or(preparation <> 'none') as any, bool_or(preparation = any(${powered})) as powered
  from renewing join canals using (visit_id) group by visit_id
), held_deliveries as (
  select visit_id, sum(rows) as rows from (${heldRows("irrigation")}) h group by visit_id
), held_uses as (
  -- A held use counts against the visit where it names one of its canals.
  select visit_id, sum(rows) as rows from (${heldRows("instruments")}) h join canals using (visit_id, canal) group by visit_id
), held_any as (
  select visit_id, sum(rows) as rows from (${heldRows()}) h group by visit_id
)
insert into visit_facts (visit_id, practice, chair, clinician, worker, patient, local_day, treatment, outcome, exclusion, continuous,
  volume_ml, uses, separations, uses_unknown, uses_held, deliveries_held, held_rows, powered)
select v.id, v.practice, v.chair, v.clinician, ${worker("v.clinician")}, v.patient, v.local_day, v.treatment, v.outcome,
  case when v.outcome = 'abandoned' then 'abandoned'
       when v.treatment not in ('primary', 'retreatment') then v.treatment
       when p.any is not true then 'not-prepared' end,
  coalesce(s.continuous, false), case when hd.rows is null then s.volume_ml end,
  coalesce(u.uses, 0), coalesce(u.separations, 0), coalesce(u.unknown, 0), coalesce(hu.rows, 0), coalesce(hd.rows, 0), coalesce(ha.rows, 0),
  coalesce(p.powered, false) or coalesce(u.powered, false)
from renewing r join sessions v on v.id = r.visit_id
left join sums s on s.visit_id = v.id
left join uses u on u.visit_id = v.id
left join prepared p on p.visit_id = v.id
left join held_deliveries hd on hd.visit_id = v.id
left join held_uses hu on hu.visit_id = v.id
left join held_any ha on ha.visit_id = v.id
${spellThen("v.clinician")}`;
