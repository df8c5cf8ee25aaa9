import type { FiguresReach } from "@/lib/access/reach";
import { ofEveryCanal, peopleOf } from "@/lib/measures/units/people-of";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";

/** How many people stand behind the records of a practice in a period; to be masked before it is shown. */
export type PeopleCount = {
  readonly practice: string;
  readonly visits: number;
  readonly patients: number;
  readonly clinicians: number;
};

/**
 * Visits, patients and clinicians of each practice within the reach, by code. From what is kept of months, where the period is made of
 * months.
 */
export async function peopleCounts(reach: FiguresReach, period: Period): Promise<PeopleCount[]> {
  const asked = monthsOfAll([period]);
  if (!asked) return recomputed(reach, period);
  const months = await readMonths(reach.practices, asked, [ofEveryCanal], true);
  const { patients, clinicians } = peopleOf(months, [period]);
  const practices = [...new Set(months.map(({ practice }) => practice))].sort();
  return practices.map((practice) => {
    const its = (all: typeof patients) =>
      all.find(({ about }) => about.kind === "practice" && about.code === practice)?.people ?? 0;
    return {
      practice,
      visits: months.reduce(
        (sum, month) => sum + (month.practice === practice ? month.patients.length : 0),
        0,
      ),
      patients: its(patients),
      clinicians: its(clinicians),
    };
  });
}

/** The same from the records, whatever is kept. */
export async function recomputed(reach: FiguresReach, period: Period): Promise<PeopleCount[]> {
  const { rows } = await pool().query<PeopleCount>(
    `with visits as (
       select visit_id, practice, patient, worker from visit_facts
       where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
     ), workers as (
       select practice, worker from visits
       union select c.practice, c.worker from canal_facts c join visits using (visit_id)
     )
     select practice, count(*)::int as visits, count(distinct patient)::int as patients,
       (select count(*)::int from workers w where w.practice = v.practice) as clinicians
     from visits v group by practice order by practice collate "C"`,
    [reach.practices, period.from, period.until],
  );
  return rows;
}
