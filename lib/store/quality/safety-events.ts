import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { safetyItems } from "./safety-sql";

/** What is listed apart from scores. */
export type SafetyWhat = "contact" | "separation" | "incident";

/** A safety item without the visit; no person is named. */
export type SafetyEvent = {
  readonly what: SafetyWhat;
  /** Kind of incident; empty for the others. */
  readonly kind: string;
  readonly practice: string;
  /** Local day of the visit, YYYY-MM-DD. */
  readonly day: string;
  /** How many there are: a row of instruments may hold several separations. */
  readonly events: number;
  /** null: not recorded, or not asked of a contact. */
  readonly patientTold: boolean | null;
  readonly reported: boolean | null;
  /** A separation of which it is not settled what becomes of it. */
  readonly pending: boolean;
};

export type SafetyCount = {
  readonly what: SafetyWhat;
  readonly kind: string;
  readonly practice: string;
  readonly patients: number;
};

/**
 * Safety items of the period's visits (safety-sql) without anything that names a visit or a person.
 *
 * @returns the events in the order of their days, and how many patients each kind concerns by practice
 */
export async function safetyEvents(
  reach: FiguresReach,
  period: Period,
): Promise<{ events: SafetyEvent[]; patients: SafetyCount[] }> {
  const parameters = [reach.practices, period.from, period.until];
  const events = await pool().query<SafetyEvent>(
    `${all} select what, kind, practice, local_day::text as day, events, told as "patientTold", reported, pending
     from told order by local_day, practice, what, kind`,
    parameters,
  );
  const patients = await pool().query<SafetyCount>(
    `${all} select what, kind, practice, count(distinct patient)::int as patients
     from told group by what, kind, practice order by what, kind, practice`,
    parameters,
  );
  return { events: events.rows, patients: patients.rows };
}

const all = `
with visits as (
  select visit_id, practice, chair, local_day, patient, worker, clinician from visit_facts
  where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
), ${safetyItems}, told as (
  select what, case what when 'incident' then kind else '' end as kind, practice, local_day, patient, events, told, reported, pending from marked
)`;
