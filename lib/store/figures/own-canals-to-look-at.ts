import type { OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";

/** One of the clinician's own canals whose records ask for a look, and why. */
export type CanalToLookAt = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
  readonly canal: string;
  readonly separations: number;
  /** Volume, flow and time do not fit together, or the irrigation outlasted the preparation. */
  readonly disagrees: boolean;
  readonly usesHeld: number;
  readonly volumeMissing: boolean;
  readonly timeMissing: boolean;
};

/**
 * The clinician's own canals with a separation, with values that disagree, with held rows, or of the treatment
 * population without a volume or a time; separations first, then the latest day. With the count of all of them.
 */
export async function ownCanalsToLookAt(
  reach: OwnReach,
  period: Period,
  limit: number,
): Promise<{ readonly canals: CanalToLookAt[]; readonly count: number }> {
  const { rows } = await pool().query<CanalToLookAt & { count: number }>(
    `select *, count(*) over ()::int as count from (
      select f.practice, v.session_id as "sessionId", f.local_day::text as day, v.tooth, f.canal, f.separations, f.disagrees,
        f.uses_held as "usesHeld", f.exclusion is null and f.volume_ml is null as "volumeMissing",
        f.exclusion is null and f.flow_s is null as "timeMissing"
      from canal_facts f join sessions v on v.id = f.visit_id
      where f.worker = $1 and f.local_day >= $2 and f.local_day < $3
    ) own
    where separations > 0 or disagrees or "usesHeld" > 0 or "volumeMissing" or "timeMissing"
    order by separations desc, disagrees desc, "usesHeld" desc, "volumeMissing" desc, day desc, "sessionId", canal limit $4`,
    [reach.clinicianKey, period.from, period.until, limit],
  );
  return { canals: rows.map(({ count: _, ...canal }) => canal), count: rows[0]?.count ?? 0 };
}
