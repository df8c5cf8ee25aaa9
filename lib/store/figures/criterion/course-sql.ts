import type { Gathering } from "./gathering";

/** SQL: arrays of who else worked in the course of a canal, and under which code. */
export function othersInCourse(gathering: Gathering): { clinicians: string; workers: string } {
  gathering.looksAt("course");
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
