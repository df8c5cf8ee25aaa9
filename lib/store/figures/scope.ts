import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { SubjectKind } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import { fillIn } from "./criterion/fill-in";

/** What a reach and a question leave of the records, as SQL: parameters 1 to 3 periods, 4 practices,
 * 5 clinician, 6 kinds of subject, 7 and 8 the first day of all and the day after the last. */
export type Scope = {
  /** Common table expressions ending in `subjects`: every unit once for each subject it belongs to. */
  withUnits(unitSql: string): string;
  /** The same of counts: units that are alike in all that tells subjects apart, and the patient where asked, are added up first. */
  withCells(unitSql: string, byPatient: boolean): string;
  parameters(periods: readonly Period[]): unknown[];
};

/** The scope of a reach; kinds of subject that the reach may not tell apart are left out. */
export function scopeOf(reach: FiguresReach | OwnReach, by: readonly SubjectKind[]): Scope {
  const own = "clinicianKey" in reach;
  const allowed: readonly SubjectKind[] = own
    ? ["clinician"]
    : by.filter((kind) => kind !== "clinician" || reach.byClinician);
  const practices = own ? null : reach.practices;
  const has = (kinds: readonly SubjectKind[]) => allowed.some((kind) => kinds.includes(kind));
  // What no asked subject is told apart by need not be told apart in the cells either.
  const told = [
    has(["practice", "clinician", "chair"]) ? "practice" : "null::text as practice",
    has(["chair"]) ? "chair" : "null::text as chair",
    ...(has(["clinician"])
      ? ["clinician", "worker"]
      : ["null::text as clinician", "null::text as worker"]),
  ].join(", ");
  const worker = own ? reach.clinicianKey : null;
  const whose = own ? "worker = $5" : "true";
  return {
    withUnits: (unitSql) => `${placed(unitSql, whose)}, subjects as (
        select u.*, s.kind, s.key from placed u ${subjects}
      )`,
    withCells: (unitSql, byPatient) => `${placed(unitSql, whose)}, cells as (
        select ${told}, ${byPatient ? "cluster" : "null::text as cluster"}, measure, period, shared, excluded, excepted, sum(units) as units, sum(numerator) as numerator,
          sum(denominator) as denominator, sum(missing) as missing, count(value) filter (where excluded is null) as n
        from placed group by 1, 2, 3, 4, 5, measure, period, shared, excluded, excepted
      ), subjects as (
        select u.*, s.kind, s.key from cells u ${subjects}
      )`,
    parameters: (periods) => [
      periods.map((_, place) => place),
      periods.map((period) => period.from),
      periods.map((period) => period.until),
      practices,
      worker,
      by.filter((kind) => allowed.includes(kind)),
      ...daysOf(periods),
    ],
  };
}

/** The first day of all periods and the day after the last. */
export function daysOf(periods: readonly Period[]): unknown[] {
  const first = periods.map((period) => period.from).sort()[0];
  const after = periods.map((period) => period.until).sort();
  return [first, after.at(-1)];
}

const subjects = `cross join lateral
  (values ('group', ''), ('practice', u.practice), ('clinician', u.worker), ('chair', u.practice || '/' || u.chair)) s(kind, key)
  where s.kind = any($6::text[]) and s.key is not null and (not u.shared or s.kind = 'clinician')`;

/** Every unit once for each period it lies in. Days are joined one by one, as PostgreSQL hashes equal days but not spans. */
function placed(unitSql: string, whose: string): string {
  return `
      with ends as (
        select min(local_day) as first, max(local_day) as last from visit_facts
      ), periods as (
        select p.period, day::date as day from ends,
          unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until),
          generate_series(greatest(since, ends.first), least(until - 1, ends.last), interval '1 day') as day
      ), units as (${fillIn(unitSql, { place, whose })})
      , placed as (
        select u.*, p.period from units u join periods p on p.day = u.local_day where $5::text is null or u.worker = $5
      )`;
}

// The days stand as parameters of their own, so that PostgreSQL plans with them.
const place =
  "($4::text[] is null or practice = any($4)) and local_day >= $7::date and local_day < $8::date";
