// What became of a separation `i` at the visit `v`, with its follow-ups.

const followups =
  "followups f where f.visit_id = i.visit_id and f.canal = i.canal and f.seq = i.seq";

/** SQL: what became of it, by the latest follow-up that says so, else by the use itself. */
export const whatBecame = `coalesce((select f.management from ${followups} and f.management is not null order by f.day desc limit 1), i.management)`;

/** SQL: was the patient told: yes where anything says so, else no where anything says that. */
export const toldYet = `case when i.patient_told or (select bool_or(f.patient_told) from ${followups}) then true
    when i.patient_told = false or (select bool_or(not f.patient_told) from ${followups}) then false end`;

/** SQL: the days it stayed pending; where it still does, up to the last day of which the practice has records. */
export const openDays = `case when i.management <> 'pending' then 0
    else coalesce((select min(f.day) from ${followups} and f.management <> 'pending') - v.local_day,
      case when ${whatBecame} is not null then (select max(l.local_day) from visit_facts l where l.practice = v.practice) - v.local_day end)
    end::float8`;
