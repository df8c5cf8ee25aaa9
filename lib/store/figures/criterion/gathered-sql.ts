/**
 * What criteria look at of many units at once, as relations: `asked` are the facts of the units asked for, and the rest is gathered by
 * their visits (`treated`), so that it takes as long as they are many and not as the records are long.
 */
export type Gathered = "treated" | "course" | "deliveries" | "uses";

/** In the order in which they rest on each other. */
export const inTurn: readonly Gathered[] = ["treated", "course", "deliveries", "uses"];

/** SQL: the relation; deliveries are also those of `course` where that is there. */
export function gatheredSql(name: Gathered, withCourse: boolean): string {
  if (name === "treated") return byVisit("sessions", "select distinct visit_id from asked", "id");
  if (name === "course") return course;
  if (name === "uses") return byVisit("instruments", "select distinct visit_id from asked");
  const visits = withCourse
    ? "select visit_id from asked union select id from course"
    : "select distinct visit_id from asked";
  return byVisit("irrigation", visits);
}

/** SQL: the rows of a table at visits. offset 0 keeps PostgreSQL from reading the whole table for them. */
export function byVisit(table: string, visits: string, key = "visit_id"): string {
  return `select r.* from (${visits}) a cross join lateral (select * from ${table} t where t.${key} = a.visit_id offset 0) r`;
}

/**
 * The visits of the course of each canal, its own and earlier ones since it was last filled, with whether its timer was started afresh
 * there, what is held of it, and whose it was.
 */
const course = `
  select u.visit_id, u.canal, v.id, v.started_at, u.timer_reset, u.deliveries_held, u.worker, u.clinician
  from asked u join treated v on v.id = u.visit_id
  union all
  select e.visit_id, e.canal, e.id, e.started_at, f.timer_reset, f.deliveries_held, f.worker, f.clinician
  from (
    select u.visit_id, u.canal, w.id, w.started_at, w.belongs,
      max(w.started_at) filter (where c.filled and w.started_at < w.until) over (partition by u.visit_id, u.canal) as filled_at
    from (
      select v.id as visit_id, v.started_at as until, p.id, p.started_at,
        case when p.case_id is not null and v.case_id is not null then p.case_id = v.case_id else p.local_day >= v.local_day - 180 end as belongs
      from treated v cross join lateral (
        select * from sessions p where p.practice = v.practice and p.patient = v.patient and p.tooth = v.tooth
          and p.id <> v.id and p.started_at <= v.started_at offset 0
      ) p offset 0
    ) w join asked u on u.visit_id = w.visit_id join canals c on c.visit_id = w.id and c.canal = u.canal
  ) e join canal_facts f on f.visit_id = e.id and f.canal = e.canal
  where e.belongs and (e.filled_at is null or e.started_at > e.filled_at)`;
