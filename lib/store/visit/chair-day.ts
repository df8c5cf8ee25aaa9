import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool } from "../database";
import type { VisitHead } from "./visit-head";

/**
 * A chair on a day on which a visit with a continuous delivery started in it, as the head of no visit; null where there
 * is none. A clinician sees those of chairs they worked at on the day.
 *
 * @throws Refused
 */
export async function chairDay(
  reach: FiguresReach | OwnReach,
  practice: string,
  chair: string,
  day: string,
): Promise<VisitHead | null> {
  const own = "clinicianKey" in reach;
  if (!own && reach.practices !== null && !reach.practices.includes(practice))
    throw new Refused(`Practice ${practice} is not yours to see.`);
  const { rows } = await pool().query<VisitHead>(
    `select '0' as id, p.code as practice, p.name as "practiceName", p.zone, '' as "sessionId", $2::text as chair, $3::date::text as day
    from practices p where p.code = $1 and exists (
      select from visit_facts f where f.practice = $1 and f.chair = $2 and f.local_day = $3::date and f.continuous)
    and ($4::text is null or exists (
      select from visit_facts f where f.practice = $1 and f.chair = $2 and f.local_day = $3::date and f.worker = $4))`,
    [practice, chair, day, own ? reach.clinicianKey : null],
  );
  const [head] = rows;
  if (!head && own) throw new Refused("You did not work at this chair on that day.");
  return head ?? null;
}
