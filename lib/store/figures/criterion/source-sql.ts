import type { Criterion, UnitKind } from "@/lib/protocol/criterion";
import { allExceptions } from "../../exceptions/all-exceptions-sql";
import { canalOf, stepReason } from "./field-sql";
import { courseVisits } from "./list-sql";
import type { Parameters } from "./parameters";

/**
 * Where the units of a kind come from, and what every unit has: whose and when it is, how many units the row stands
 * for, and why its canal is outside the treatment population. `{place}` stands for the condition on practice and day,
 * `{whose}` for that on the clinician, both over columns of the facts.
 */
export type Source = {
  readonly from: string;
  readonly columns: string;
  /** Why its canal is outside the treatment population. */
  readonly exclusion: string;
};

const common = "u.practice, u.chair, u.clinician, u.worker, u.patient, u.local_day, u.visit_id";
const ofVisit = `${common}, '' as canal, null::int as seq, 1 as weight`;
const ofRow = (weight: string) => `${common}, u.canal, i.seq, ${weight} as weight`;
const canals = "(select * from canal_facts where {place} and {whose}) u";
const withCanal = `join canals c on c.visit_id = u.visit_id and c.canal = u.canal join sessions v on v.id = u.visit_id`;
const uses = `${canals} ${withCanal} join instruments i on i.visit_id = u.visit_id and i.canal = u.canal`;

const sources: Readonly<Record<UnitKind, Source>> = {
  canal: {
    from: `${canals} ${withCanal}`,
    columns: `${common}, u.canal, null::int as seq, 1 as weight`,
    exclusion: "u.exclusion",
  },
  delivery: {
    from: `(select * from visit_facts where {place}) f join sessions v on v.id = f.visit_id
      join irrigation i on i.visit_id = f.visit_id
      left join canal_facts u on u.visit_id = i.visit_id and u.canal = i.canal
      left join canals c on c.visit_id = i.visit_id and c.canal = i.canal`,
    columns: `f.practice, f.chair, coalesce(u.clinician, f.clinician) as clinician, coalesce(u.worker, f.worker) as worker, f.patient, f.local_day,
      f.visit_id, i.canal, i.seq, 1 as weight`,
    exclusion: "coalesce(u.exclusion, case when i.canal = '' then f.exclusion end)",
  },
  use: { from: uses, columns: ofRow("coalesce(i.uses, 1)"), exclusion: "u.exclusion" },
  separation: {
    from: `${uses} and i.separated > 0`,
    columns: ofRow("i.separated"),
    exclusion: "u.exclusion",
  },
  visit: {
    from: "(select * from visit_facts where {place} and {whose}) u join sessions v on v.id = u.visit_id",
    columns: ofVisit,
    exclusion: "u.exclusion",
  },
  // Days of a chair on which a visit with a continuous delivery started; nobody's, and in no patient.
  "chair-day": {
    from: "(select distinct practice, chair, local_day from visit_facts where continuous and {place}) u",
    columns: `u.practice, u.chair, null::text as clinician, null::text as worker, null::text as patient, u.local_day,
      null::bigint as visit_id, null::text as canal, null::int as seq, 1 as weight`,
    exclusion: "null::text",
  },
};

/** The source of a criterion's units. Whoever worked in a whole course may be others than who filled the canal. */
export function sourceOf({ unit, wholeCourse }: Criterion): Source {
  const source = sources[unit];
  return wholeCourse ? { ...source, from: source.from.replace(" and {whose}", "") } : source;
}

/** SQL: the clinicians for whom a unit counts: whoever did it; of a whole course also, and for them alone, who else did. */
export function workersOf({ wholeCourse, byClinician }: Criterion): string {
  if (!byClinician) return "select null::text as clinician, null::text as worker, false as shared";
  const own = "select b.clinician, b.worker, false as shared";
  if (!wholeCourse) return own;
  return `${own} union all select min(p.clinician), p.worker, true
    from canal_facts u join sessions v on v.id = u.visit_id cross join lateral ${courseVisits} p
    where u.visit_id = b.visit_id and u.canal = b.canal and p.worker <> b.worker group by p.worker`;
}

/** SQL: the coded reason why a unit was rightly not met: a step's, its canal's exception, or its visit's. */
export function exceptionSql(criterion: Criterion, parameters: Parameters): string {
  const { unit, exceptions, id } = criterion;
  if (exceptions === null || unit === "chair-day") return "null::text";
  const places = unit === "visit" ? ["''"] : [canalOf(unit), "''"];
  const named = places.map(
    (canal) =>
      `(select x.reason from ${allExceptions} x where x.visit_id = v.id and x.canal = ${canal} and x.criterion = ${parameters.bind(id, "text")} limit 1)`,
  );
  const steps = exceptions.steps.map((step) => stepReason(step, unit, parameters));
  return `coalesce(${[...steps, ...named].join(", ")})`;
}
