import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** An incident, or a separation of which the patient is not known to have been told. No person is named. */
export type SafetyEvent = {
  readonly what: "incident" | "separation";
  /** Kind of incident; empty for a separation. */
  readonly kind: string;
  readonly practice: string;
  /** Local day of the visit, YYYY-MM-DD. */
  readonly day: string;
  /** null: not recorded. */
  readonly patientTold: boolean | null;
  readonly reported: boolean | null;
};

export type SafetyCount = {
  readonly what: SafetyEvent["what"];
  readonly kind: string;
  readonly practice: string;
  readonly patients: number;
};

/**
 * Incidents, and separations whose patient was not told or of which telling is not recorded, at visits of the
 * period; a follow-up that says the patient was told settles it.
 *
 * @returns the events in the order of their days, and how many patients each kind concerns by practice
 */
export async function safetyEvents(
  reach: FiguresReach,
  period: Period,
): Promise<{ events: SafetyEvent[]; patients: SafetyCount[] }> {
  const parameters = [reach.practices, period.from, period.until];
  const events = await pool().query<SafetyEvent>(
    `${all} select what, kind, practice, local_day::text as day, patient_told as "patientTold", reported
     from events order by local_day, practice, what, kind`,
    parameters,
  );
  const patients = await pool().query<SafetyCount>(
    `${all} select what, kind, practice, count(distinct patient)::int as patients
     from events group by what, kind, practice order by what, kind, practice`,
    parameters,
  );
  return { events: events.rows, patients: patients.rows };
}

const all = `
with visits as (
  select id, practice, local_day, patient from sessions
  where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
), separations as (
  select v.practice, v.local_day, v.patient,
    case when i.patient_told or bool_or(f.patient_told) then true
         when i.patient_told = false or bool_or(f.patient_told = false) then false end as patient_told
  from visits v join instruments i on i.visit_id = v.id
  left join followups f on f.visit_id = i.visit_id and f.canal = i.canal and f.seq = i.seq
  where i.separated > 0
  group by v.practice, v.local_day, v.patient, i.visit_id, i.canal, i.seq, i.patient_told
), events as (
  select 'incident' as what, n.kind, v.practice, v.local_day, v.patient, n.patient_told, n.reported
  from visits v join incidents n on n.visit_id = v.id
  union all
  select 'separation', '', practice, local_day, patient, patient_told, null
  from separations where patient_told is not true
)`;
