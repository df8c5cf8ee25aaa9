import { activationSeconds, flowSeconds, volume } from "../figures/criterion/delivery-sql";
import { spellThen, worker } from "./spells";

/** SQL: volume, flow and time are all there and disagree by more than a tenth. */
const disagrees = `abs(i.flow_ml_min * i.duration_s / 60 - i.volume_ml) > 0.1 * i.volume_ml`;

/** Sums in the order of seq, as floating-point sums depend on it; null when any delivery is unknown. */
function wholeSum(value: string, only = "true"): string {
  return `case when count(${value}) = count(*) then coalesce(sum(${value} order by seq) filter (where ${only}), 0) end`;
}

function theOne(column: string): string {
  return `case when min(${column}) = max(${column}) and count(${column}) = count(*) then min(${column}) when count(${column}) > 0 then 'mixed' end`;
}

/**
 * Held rows of a table, or of any, by the visit and canal they name. One that may belong to several visits counts in each of them:
 * none of them is known to be complete without it.
 */
export function heldRows(table?: string): string {
  const held = `h.state = 'held' ${table ? `and h.table_name = '${table}'` : ""}`;
  return `select visit_id, canal, count(*)::int as rows from (
      select v.id as visit_id, h.canal from renewing r join sessions v on v.id = r.visit_id
      join held h on h.session_id = v.session_id and (h.practice is null or h.practice = v.practice) and ${held}
      union all
      select r.visit_id, h.canal from held h
      cross join jsonb_array_elements_text(h.values -> 'candidate_visits') c (id) join renewing r on r.visit_id = c.id::bigint
      where h.kind = 'several-visits' and ${held}
    ) of_visits group by visit_id, canal`;
}

/** SQL: the code of whoever treated the canal. */
const whose = "coalesce(c.clinician, v.clinician)";

/** Inserts the derived row of every canal of the visits in `renewing`; the rules are those of the measures' definitions. */
export const canalFacts = `
with deliveries as (
  select i.visit_id, i.canal, i.seq, i.irrigant = 'naocl' as hypochlorite, i.delivery, i.basis, i.dwell_s,
    ${activationSeconds} as activation_s, ${flowSeconds("c.timer_reset")} as flow_s, ${volume("c.timer_reset")} as volume_ml, ${disagrees} as disagrees,
    case when i.delivery = 'continuous' then i.duration_s end as continuous_s
  from renewing r join irrigation i using (visit_id) join canals c on c.visit_id = i.visit_id and c.canal = i.canal
  -- Kept apart, so that each value is computed once and not wherever it is summed.
  offset 0
), sums as (
  select visit_id, canal, ${theOne("delivery")} as delivery, ${theOne("basis")} as basis,
    ${wholeSum("flow_s")} as flow_s, ${wholeSum("flow_s", "hypochlorite")} as hypochlorite_s,
    ${wholeSum("dwell_s")} as dwell_s, ${wholeSum("activation_s")} as activation_s,
    ${wholeSum("volume_ml")} as volume_ml, ${wholeSum("volume_ml", "hypochlorite")} as hypochlorite_ml,
    coalesce(bool_or(disagrees), false) as disagrees, sum(continuous_s) as continuous_s
  from deliveries group by visit_id, canal
), uses as (
  select visit_id, canal, sum(coalesce(uses, 1)) as uses, sum(coalesce(separated, 0)) as separations,
    coalesce(sum(coalesce(uses, 1)) filter (where separated is null), 0) as unknown
  from renewing join instruments using (visit_id) group by visit_id, canal
), held_deliveries as (${heldRows("irrigation")}), held_uses as (${heldRows("instruments")})
insert into canal_facts (visit_id, canal, practice, chair, clinician, worker, patient, local_day, tooth, treatment, exclusion, preparation,
  delivery, basis, flow_s, hypochlorite_s, dwell_s, activation_s, volume_ml, hypochlorite_ml, disagrees,
  uses, separations, uses_unknown, uses_held, deliveries_held, timer_reset, working_length_mm, length_method, curvature_deg)
select c.visit_id, c.canal, v.practice, v.chair, coalesce(c.clinician, v.clinician), ${worker(whose)}, v.patient, v.local_day, v.tooth, v.treatment,
  case when v.outcome = 'abandoned' then 'abandoned'
       when v.treatment not in ('primary', 'retreatment') then v.treatment
       when c.preparation = 'none' then 'not-prepared' end,
  c.preparation, s.delivery, s.basis,
  case when hd.rows is null then s.flow_s end, case when hd.rows is null then s.hypochlorite_s end,
  case when hd.rows is null then s.dwell_s end, case when hd.rows is null then s.activation_s end,
  case when hd.rows is null then s.volume_ml end, case when hd.rows is null then s.hypochlorite_ml end,
  coalesce(s.disagrees or s.continuous_s > 1.1 * c.preparation_s, false),
  coalesce(u.uses, 0), coalesce(u.separations, 0), coalesce(u.unknown, 0), coalesce(hu.rows, 0), coalesce(hd.rows, 0),
  c.timer_reset, c.working_length_mm, c.length_method, c.curvature_deg
from renewing r join sessions v on v.id = r.visit_id join canals c on c.visit_id = v.id
left join sums s on s.visit_id = c.visit_id and s.canal = c.canal
left join uses u on u.visit_id = c.visit_id and u.canal = c.canal
left join held_deliveries hd on hd.visit_id = c.visit_id and hd.canal = c.canal
left join held_uses hu on hu.visit_id = c.visit_id and hu.canal = c.canal
${spellThen(whose)}
-- Indexes by day take rows in the order of their days in half the time.
order by v.local_day`;
