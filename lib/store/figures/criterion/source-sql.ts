import type { Criterion, UnitKind } from "@/lib/protocol/criterion";
import { othersInCourse } from "./course-sql";
import { canalOf } from "./field-sql";
import type { Gathering } from "./gathering";
import { stepReason } from "./step-sql";
import type { Tables } from "./tables";

/**
 * Where the units of a kind come from, and what every unit has: whose and when it is, how many units the row stands
 * for, and why its canal is outside the treatment population. `{place}` stands for the condition on practice and day,
 * `{whose}` for that on the clinician, both over columns of the facts.
 */
export type Source = {
  /** The facts `u` of the units, where lists hang on them. */
  readonly facts?: string;
  readonly from: string;
  readonly columns: string;
  /** Why its canal is outside the treatment population. */
  readonly exclusion: string;
};

const common = "u.practice, u.chair, u.clinician, u.worker, u.patient, u.local_day, u.visit_id";
const ofVisit = `${common}, '' as canal, null::int as seq, 1 as weight`;
const ofRow = (weight: string) => `${common}, u.canal, i.seq, ${weight} as weight`;

function sources(t: Tables): Readonly<Record<UnitKind, Source>> {
  const canals = `(select * from ${t.canalFacts} where {place} and {whose}) u`;
  const visits = `(select * from ${t.visitFacts} where {place} and {whose}) u`;
  const chairDays = `(select distinct practice, chair, local_day from ${t.visitFacts} where continuous and {place}) u`;
  const withCanal = `${t.canal} ${t.visit}`;
  const uses = `${canals} ${withCanal} join ${t.instruments} i on i.visit_id = u.visit_id and i.canal = u.canal`;
  return {
    canal: {
      facts: canals,
      from: `${canals} ${withCanal}`,
      columns: `${common}, u.canal, null::int as seq, 1 as weight`,
      exclusion: "u.exclusion",
    },
    delivery: {
      from: `(select * from ${t.visitFacts} where {place}) f join ${t.sessions} v on v.id = f.visit_id
      join ${t.irrigation} i on i.visit_id = f.visit_id
      left join ${t.canalFacts} u on u.visit_id = i.visit_id and u.canal = i.canal
      left join ${t.canals} c on c.visit_id = i.visit_id and c.canal = i.canal`,
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
      facts: visits,
      from: `${visits} ${t.visit}`,
      columns: ofVisit,
      exclusion: "u.exclusion",
    },
    // Days of a chair on which a visit with a continuous delivery started; nobody's, and in no patient.
    "chair-day": {
      facts: chairDays,
      from: chairDays,
      columns: `u.practice, u.chair, null::text as clinician, null::text as worker, null::text as patient, u.local_day,
      null::bigint as visit_id, null::text as canal, null::int as seq, 1 as weight`,
      exclusion: "null::text",
    },
  };
}

/** The source of a criterion's units. Whoever worked in a whole course may be others than who filled the canal. */
export function sourceOf({ unit, wholeCourse }: Criterion, tables: Tables): Source {
  const source = sources(tables)[unit];
  const everyone = (sql: string) => (wholeCourse ? sql.replaceAll(" and {whose}", "") : sql);
  return {
    ...source,
    from: everyone(source.from),
    ...(source.facts === undefined ? {} : { facts: everyone(source.facts) }),
  };
}

/**
 * SQL: the clinicians for whom a unit `b` counts: whoever did it; of a whole course also, and for them alone, who else did. Those come
 * in columns that the unit is to have beside its own.
 */
export function workersOf(
  { wholeCourse, byClinician }: Criterion,
  gathering: Gathering,
): { readonly workers: string; readonly columns: string } {
  if (!byClinician)
    return {
      workers: "select null::text as clinician, null::text as worker, false as shared",
      columns: "",
    };
  const own = "select b.clinician, b.worker, false as shared";
  if (!wholeCourse) return { workers: own, columns: "" };
  const others = othersInCourse(gathering);
  return {
    workers: `${own} union all select o.clinician, o.worker, true from unnest(b.other_clinicians, b.other_workers) o(clinician, worker)`,
    columns: `, ${others.clinicians} as other_clinicians, ${others.workers} as other_workers`,
  };
}

/** SQL: the coded reason why a unit was rightly not met: a step's, its canal's exception, or its visit's. */
export function exceptionSql(criterion: Criterion, gathering: Gathering): string {
  const { unit, exceptions, id } = criterion;
  if (exceptions === null || unit === "chair-day") return "null::text";
  const places = unit === "visit" ? ["''"] : [canalOf(unit), "''"];
  const steps = exceptions.steps.map((step) => stepReason(step, gathering));
  const named = places.map((canal) => namedReason(canal, id, gathering));
  return `coalesce(${[...steps, ...named].join(", ")})`;
}

/**
 * SQL: the reason of an exception, imported or else entered on a page. Few units ask for one, so that each looks it up by itself.
 */
function namedReason(canal: string, id: string, { parameters }: Gathering): string {
  const criterion = parameters.bind(id, "text");
  return `(select x.reason from exceptions x where x.visit_id = v.id and x.canal = ${canal} and x.criterion = ${criterion}),
      (select e.reason from entered_exceptions e where e.practice = v.practice and e.session_id = v.session_id and e.canal = ${canal}
         and e.criterion = ${criterion} and e.withdrawn_at is null limit 1)`;
}
