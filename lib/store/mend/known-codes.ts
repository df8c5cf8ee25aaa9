import type { RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";

/** Codes that a cell of a practice's row may well mean. */
export type KnownCodes = {
  readonly practice: readonly string[];
  readonly chair: readonly string[];
  readonly clinician: readonly string[];
  /** Canals that the row's visit has. */
  readonly canal: readonly string[];
};

/** The codes known within the reach, of one practice where it is named, and the canals of a visit. */
export async function knownCodes(
  reach: RecordsReach,
  practice: string | null,
  sessionId: string | null,
): Promise<KnownCodes> {
  const within =
    "($1::text[] is null or practice = any($1)) and ($2::text is null or practice = $2)";
  const { rows } = await pool().query<KnownCodes>(
    `select array(select code from practices where $1::text[] is null or code = any($1) order by 1) as practice,
       array(select distinct code from chairs where ${within} order by 1) as chair,
       array(select distinct code from clinicians where ${within} order by 1) as clinician,
       array(select distinct c.canal from canals c join sessions v on v.id = c.visit_id where v.session_id = $3 and ${within.replaceAll("practice =", "v.practice =")} order by 1) as canal`,
    [reach.practices, practice, sessionId],
  );
  return rows[0] ?? { practice: [], chair: [], clinician: [], canal: [] };
}
