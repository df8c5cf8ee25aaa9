import { criterionId } from "@/lib/protocol/criterion";
import { fillIn } from "../figures/criterion/fill-in";
import type { Judging } from "../figures/criterion/units-sql";
import { isContinuous, unitSql } from "../figures/unit-sql";
import { askedBy } from "./strata-parts";

/** Practices and days of the months made together: parameters 1 to 3, the practices and the first and last-but-one day. */
const place = "practice = any($1::text[]) and local_day >= $2::date and local_day < $3::date";

const month = "date_trunc('month', local_day)::date";

/** SQL: the visits of each practice and month within a place, numbered from 0 by id. */
export function numberedOf(visitFacts: string, within: string): string {
  return `select visit_id, practice, local_day, ${month} as month, patient, chair, clinician, worker,
    (row_number() over (partition by practice, ${month} order by visit_id) - 1)::int as visit
  from ${visitFacts} where ${within}`;
}

/** Where the copies of a run have them. */
export const copiedNumbers = "copied_numbers";

const numbered = numberedOf("visit_facts", place);

/**
 * A query giving the patient of each visit of each practice and month, as text: the id of the first of all their visits to the practice.
 * Whatever changes that forgets the months of every visit of theirs, so that a patient has one number in all that is kept. The
 * offset keeps PostgreSQL from going through all visits by id until one is the patient's.
 */
export const patientsSql = `with numbered as (${numbered})
  select n.practice, n.month::text as month, array_to_json(array_agg(p.first order by n.visit))::text as content
  from numbered n cross join lateral (
    select min(id) as first from (select v.id from sessions v where v.patient = n.patient and v.practice = n.practice offset 0) v
  ) p
  group by n.practice, n.month`;

/** A query giving whose the visits of each practice and month are, as lib/measures/units/alike has it, as text. */
export const visitsSql = `with numbered as (${numbered}), whose as (
    select practice, month, chair, clinician, worker, (row_number() over (partition by practice, month order by chair, clinician, worker) - 1)::int as place
    from (select distinct practice, month, chair, clinician, worker from numbered) d
  )
  select n.practice, n.month::text as month, json_build_object(
    'ids', array_to_json(array_agg(n.visit_id order by n.visit)),
    'by', array_to_json(array_agg(w.place order by n.visit)),
    'whose', (select json_agg(json_build_array(o.chair, o.clinician, o.worker) order by o.place) from whose o where o.practice = n.practice and o.month = n.month)
  )::text as content
  from numbered n join whose w using (practice, month, chair, clinician, worker) group by n.practice, n.month`;

/**
 * A query giving the units of one measure in each practice and month, alike ones together, as text; those of a measure by strata
 * with the measure and stratum of each.
 */
export function alikeSql(part: string, judging: Judging): string {
  if (part === "separation-per-instrument") return instrumentsSql;
  const { measure, strata } = askedBy(part);
  const asked = { ...(strata ? { strata } : {}), ...(criterionId(part) ? { judging } : {}) };
  const units = fillIn(unitSql([measure], asked), { place, whose: "true" });
  const continuous = isContinuous(measure);
  // Both lists are gathered in one pass, so that the nth value is of the nth visit.
  const visits = judging.copies ? `select * from ${copiedNumbers} where ${place}` : numbered;
  return `with numbered as (${visits}), alike as (
      select u.practice, date_trunc('month', u.local_day)::date as month, json_build_array(u.chair, u.clinician, u.worker, u.shared, u.excluded, u.excepted,
        u.units, u.numerator, u.denominator, u.missing, array_agg(n.visit), ${continuous ? "array_agg(u.value)" : "null"}${strata ? ", u.measure" : ""}) as content
      from (${units}) u left join numbered n on n.visit_id = u.visit_id
      group by u.practice, date_trunc('month', u.local_day), u.chair, u.clinician, u.worker, u.shared, u.excluded, u.excepted, u.units, u.numerator, u.denominator, u.missing, u.measure
    ) ${gathered}`;
}

const gathered = `select practice, month::text as month, json_agg(content)::text as content from alike group by practice, month`;

/** The instruments that carry an id, by what is known of their uses; lib/measures counts them, each once. */
const instrumentsSql = `with alike as (
    select f.practice, date_trunc('month', f.local_day)::date as month, json_build_array(f.chair, f.clinician, f.worker, false, null, null,
      1, (coalesce(i.separated, 0) > 0)::int, (not (i.separated is null))::int, (i.separated is null)::int, array_agg(distinct i.instrument_id), null) as content
    from (select * from canal_facts where ${place}) f join instruments i on i.visit_id = f.visit_id and i.canal = f.canal
    where i.instrument_id is not null
    group by f.practice, date_trunc('month', f.local_day), f.chair, f.clinician, f.worker, coalesce(i.separated, 0) > 0, i.separated is null
  ) ${gathered}`;
