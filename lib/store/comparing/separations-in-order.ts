import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { caseMark } from "../figures/stratum-sql";

/** Whose units: all within the reach, one practice's or one clinician's. */
export type Whose = {
  readonly kind: "group" | "practice" | "clinician";
  /** The key of a practice or clinician; empty for the group. */
  readonly subject: string;
};

/** A separation's place among the units in the order they were treated in, from 1, and its local day. */
export type PlacedEvent = { readonly place: number; readonly day: string };

/** Units whose outcome is known, in order: how many, the first and last day, and where separations stand. */
export type SeparationsInOrder = {
  readonly units: number;
  readonly first: string | null;
  readonly last: string | null;
  readonly events: readonly PlacedEvent[];
};

/** Separations among canals or visits in the order of treatment; a unit's outcome is known as in the measures per canal and visit. */
export async function separationsInOrder(
  reach: FiguresReach | OwnReach,
  unit: "canal" | "visit",
  whose: Whose,
  period: Period,
): Promise<SeparationsInOrder> {
  const { rows } = await pool().query<{
    units: number;
    first: string | null;
    last: string | null;
    places: number[] | null;
    days: string[] | null;
  }>(
    `with units as (${unitsInOrder(unit)})
    select count(*)::int as units, min(day) as first, max(day) as last,
      array_agg(place order by place) filter (where event) as places, array_agg(day order by place) filter (where event) as days
    from units`,
    scopeParameters(reach, whose, period),
  );
  const [row] = rows;
  const events = (row?.places ?? []).map((place, index) => ({
    place: Number(place),
    day: row?.days?.[index] ?? "",
  }));
  return { units: row?.units ?? 0, first: row?.first ?? null, last: row?.last ?? null, events };
}

/** A canal in the order of treatment: its day, its visit, its case as in strata, and whether an instrument separated. */
export type CanalInOrder = {
  readonly day: string;
  readonly practice: string;
  readonly sessionId: string;
  readonly canal: string;
  /** The case as strata carry it: front/slight/primary. */
  readonly case: string;
  readonly event: boolean;
};

/** The clinician's canals one by one, for a running sum; outcomes that are not known are left out. */
export async function canalsInOrder(
  reach: FiguresReach | OwnReach,
  clinicianKey: string,
  period: Period,
): Promise<CanalInOrder[]> {
  const whose = { kind: "clinician", subject: clinicianKey } as const;
  const { rows } = await pool().query<CanalInOrder>(
    `with units as (${unitsInOrder("canal")})
    select day, practice, session_id as "sessionId", canal, "case", event from units order by place`,
    scopeParameters(reach, whose, period),
  );
  return rows;
}

/** SQL: units whose outcome is known, with their place; parameters 1 practices, 2 clinician, 3 practice, 4 and 5 the period. */
export function unitsInOrder(unit: "canal" | "visit"): string {
  const [table, canal, mark] =
    unit === "canal" ? ["canal_facts", "u.canal", caseMark()] : ["visit_facts", "''", "''"];
  return `
    select row_number() over (order by s.started_at, u.visit_id, ${canal})::int as place, u.local_day::text as day, u.practice,
      s.session_id, ${canal} as canal, ${mark} as "case", u.separations > 0 as event, u.visit_id, u.worker
    from ${table} u join sessions s on s.id = u.visit_id
    where ($1::text[] is null or u.practice = any($1)) and ($2::text is null or u.worker = $2) and ($3::text is null or u.practice = $3)
      and u.local_day >= $4::date and u.local_day < $5::date
      and u.uses + u.uses_held > 0 and (u.separations > 0 or (u.uses_unknown = 0 and u.uses_held = 0))`;
}

/** A reach of one's own is of oneself whatever is asked; other clinicians are told apart only by a reach that may. */
function scopeParameters(reach: FiguresReach | OwnReach, whose: Whose, period: Period): unknown[] {
  const own = "clinicianKey" in reach;
  if (!own && whose.kind === "clinician" && !reach.byClinician)
    throw new RangeError("this reach tells no clinicians apart");
  const worker = own ? reach.clinicianKey : whose.kind === "clinician" ? whose.subject : null;
  const practice = !own && whose.kind === "practice" ? whose.subject : null;
  return [own ? null : reach.practices, worker, practice, period.from, period.until];
}
