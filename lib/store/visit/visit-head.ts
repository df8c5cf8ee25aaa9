import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool } from "../database";

/** One visit within reach, and where and when it was. */
export type VisitHead = {
  readonly id: string;
  readonly practice: string;
  readonly practiceName: string;
  readonly zone: string;
  readonly sessionId: string;
  readonly chair: string;
  readonly day: string;
};

/**
 * The visit of that number in the practice: for whoever may tell the practice's clinicians apart, or for the
 * clinician who worked on it. Null where the practice has no such visit.
 *
 * @throws Refused where it is not the viewer's to see; of a visit that is not one's own nothing is said, not even whether it is there
 */
export async function visitHead(
  reach: FiguresReach | OwnReach,
  practice: string,
  sessionId: string,
): Promise<VisitHead | null> {
  if ("practices" in reach && !reach.byClinician)
    throw new Refused(
      "Single visits are for the clinical lead and for the clinician who worked on them.",
    );
  return unitVisit(reach, practice, sessionId);
}

/** The same for whoever may see units, also without clinicians: nothing of the visit is told but where and when it was. @throws Refused */
export async function unitVisit(
  reach: FiguresReach | OwnReach,
  practice: string,
  sessionId: string,
): Promise<VisitHead | null> {
  const own = "clinicianKey" in reach;
  if (!own && reach.practices !== null && !reach.practices.includes(practice))
    throw new Refused(`Practice ${practice} is not yours to see.`);
  const { rows } = await pool().query<VisitHead>(
    `select v.id::text, v.practice, p.name as "practiceName", p.zone, v.session_id as "sessionId", v.chair, v.local_day::text as day
    from sessions v join practices p on p.code = v.practice
    where v.practice = $1 and v.session_id = $2 and ($3::text is null
      or exists (select from visit_facts f where f.visit_id = v.id and f.worker = $3)
      or exists (select from canal_facts f where f.visit_id = v.id and f.worker = $3))`,
    [practice, sessionId, own ? reach.clinicianKey : null],
  );
  const [head] = rows;
  if (!head && own)
    throw new Refused("This page shows visits that you worked on; this is none of yours.");
  return head ?? null;
}
