import type { Gathering } from "./gathering";

/**
 * SQL: the visits of the course of each canal in `asked`, its own and earlier ones since it was last filled, with whether its timer
 * was started afresh there, what is held of it, and whose it was.
 */
export const course = `
  select u.visit_id, u.canal, v.id, v.started_at, u.timer_reset, u.deliveries_held, u.worker, u.clinician
  from asked u join sessions v on v.id = u.visit_id
  union all
  select e.visit_id, e.canal, e.id, e.started_at, f.timer_reset, f.deliveries_held, f.worker, f.clinician
  from (
    select u.visit_id, u.canal, w.id, w.started_at, w.belongs,
      max(w.started_at) filter (where c.filled and w.started_at < w.until) over (partition by u.visit_id, u.canal) as filled_at
    from (
      select v.id as visit_id, v.started_at as until, p.id, p.started_at,
        case when p.case_id is not null and v.case_id is not null then p.case_id = v.case_id else p.local_day >= v.local_day - 180 end as belongs
      from sessions v join sessions p on p.practice = v.practice and p.patient = v.patient and p.tooth = v.tooth
        and p.id <> v.id and p.started_at <= v.started_at
      where v.id in (select visit_id from asked)
    ) w join asked u on u.visit_id = w.visit_id join canals c on c.visit_id = w.id and c.canal = u.canal
  ) e join canal_facts f on f.visit_id = e.id and f.canal = e.canal
  where e.belongs and (e.filled_at is null or e.started_at > e.filled_at)`;

/** SQL: arrays of who else worked in the course of a canal, and under which code. */
export function othersInCourse(gathering: Gathering): { clinicians: string; workers: string } {
  gathering.looksAtCourse();
  const o = gathering.joined(
    "others in the course",
    (alias) => `left join (
          select visit_id, canal, array_agg(clinician) as clinicians, array_agg(worker) as workers from (
            select p.visit_id, p.canal, p.worker, min(p.clinician) as clinician
            from course p join asked a on a.visit_id = p.visit_id and a.canal = p.canal
            where p.worker <> a.worker group by p.visit_id, p.canal, p.worker
          ) o group by visit_id, canal
        ) ${alias} on ${alias}.visit_id = u.visit_id and ${alias}.canal = u.canal`,
  );
  return { clinicians: `${o}.clinicians`, workers: `${o}.workers` };
}
