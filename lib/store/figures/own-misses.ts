import type { OwnReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { protocolWithin } from "../protocol/versions";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { criterionUnits, type Evidence } from "./criterion/units-sql";
import { practicesOf } from "./practices-of";

/** A unit of one's own that counts against a criterion, with what the criterion looks at. */
export type Miss = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
  /** Empty where the unit is the visit. */
  readonly canal: string;
  /** There is no evidence either way. */
  readonly missing: boolean;
  /** Of a delivery or use, its number in the canal. */
  readonly seq: number | null;
  readonly evidence: Evidence;
};

/**
 * The clinician's own units that are not met or not recorded, latest first, a page of them. What staff and
 * equipment do together is nobody's own and has none.
 */
export async function ownMisses(
  reach: OwnReach,
  criterion: Criterion,
  period: Period,
  page: { readonly limit: number; readonly offset: number },
): Promise<Miss[]> {
  if (!criterion.byClinician) return [];
  const parameters = new Parameters([
    reach.clinicianKey,
    period.from,
    period.until,
    page.limit,
    page.offset,
    await practicesOf(reach),
  ]);
  const judging = { protocol: await protocolWithin(reach), parameters };
  const units = fillIn(criterionUnits(criterion.id, judging, { evidence: true }), {
    place: "practice = any($6::text[]) and local_day >= $2 and local_day < $3",
    whose: "worker = $1",
  });
  const { rows } = await pool().query<Miss>(
    `select u.practice, v.session_id as "sessionId", u.local_day::text as day, v.tooth, u.canal, u.seq, u.missing, u.evidence
    from (${units}) u join sessions v on v.id = u.visit_id
    where u.excluded is null and u.excepted is null and not u.met
    order by u.local_day desc, v.started_at desc, v.id, u.canal, u.seq limit $4 offset $5`,
    parameters.values,
  );
  return rows;
}
