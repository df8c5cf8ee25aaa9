import type { OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** A visit among a clinician's own, by what tells it to them. */
export type OwnVisit = {
  readonly practice: string;
  readonly sessionId: string;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  readonly tooth: string;
};

/** The clinician's visits in the period, at the practice or, where that is null, anywhere; the oldest first. */
export async function ownVisits(
  reach: OwnReach,
  practice: string | null,
  period: Period,
): Promise<OwnVisit[]> {
  const { rows } = await pool().query<OwnVisit>(
    `select v.practice, v.session_id as "sessionId", v.local_day::text as day, v.tooth
     from visit_facts f join sessions v on v.id = f.visit_id
     where f.local_day >= $2::date and f.local_day < $3::date and ($4::text is null or v.practice = $4)
       and (f.worker = $1 or exists (select from canal_facts c where c.visit_id = f.visit_id and c.worker = $1))
     order by v.local_day, v.started_at, v.id`,
    [reach.clinicianKey, period.from, period.until, practice],
  );
  return rows;
}
