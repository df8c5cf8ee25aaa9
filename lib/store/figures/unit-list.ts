import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { criterionId } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { protocolWithin } from "../protocol/versions";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { criterionUnits, type Judging } from "./criterion/units-sql";
import { keptLacking } from "./kept-lacking";
import { continuousValue } from "./unit-sql";

/** What became of a unit of a measure or criterion. */
export type UnitState =
  | "recorded"
  | "met"
  | "not-met"
  | "excepted"
  | "separated"
  | "no-separation"
  | "not-recorded"
  | "left-out";

/** One unit behind a figure. A chair-day has no visit, a visit no canal. */
export type ListedUnit = {
  readonly practice: string;
  readonly chair: string;
  readonly clinician: string | null;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  readonly sessionId: string | null;
  readonly tooth: string | null;
  readonly canal: string | null;
  /** Of a delivery or use, its number in the canal. */
  readonly seq: number | null;
  readonly state: UnitState;
  /** Why it is left out or excepted. */
  readonly reason: string | null;
  /** Of a continuous measure. */
  readonly value: number | null;
};

export type UnitsAsked = {
  readonly measure: string;
  readonly period: Period;
  /** Key of the clinician whose units; all where undefined. */
  readonly clinician?: string | undefined;
  /** Those of one chair of a practice. */
  readonly chair?: string | undefined;
  readonly state?: UnitState | undefined;
  readonly limit: number;
  readonly offset: number;
};

/**
 * A page of the units behind a figure, latest first, and how many there are in all. Clinicians are named only where the
 * reach tells them apart; a reach of one's own has one's own units.
 */
export async function unitList(
  reach: FiguresReach | OwnReach,
  asked: UnitsAsked,
): Promise<{ units: ListedUnit[]; all: number }> {
  const own = "clinicianKey" in reach;
  const named = !own && reach.byClinician;
  const parameters = new Parameters([
    own ? null : reach.practices,
    asked.period.from,
    asked.period.until,
    own ? reach.clinicianKey : named ? (asked.clinician ?? null) : null,
    asked.state ?? null,
    asked.limit,
    asked.offset,
    asked.chair ?? null,
  ]);
  const protocol = await protocolWithin(reach);
  const lacking = await keptLacking(reach, protocol, [asked.measure], [asked.period]);
  const judging = { protocol, parameters, lacking };
  const { rows } = await pool().query<ListedUnit & { all: number }>(
    `with units as (${fillIn(listed(asked.measure, judging), within)}),
     chosen as (select * from units where (case when $4::text is null then not shared else worker = $4 end) and ($5::text is null or state = $5) and ($8::text is null or chair = $8))
     select u.practice, u.chair, ${named ? "u.clinician" : "null::text as clinician"}, u.local_day::text as day, v.session_id as "sessionId", v.tooth, nullif(u.canal, '') as canal, u.seq,
       u.state, u.reason, u.value, (select count(*)::int from chosen) as all
     from chosen u left join sessions v on v.id = u.visit_id
     order by u.local_day desc, u.practice, u.chair, v.started_at desc, v.id, u.canal, u.seq limit $6 offset $7`,
    parameters.values,
  );
  return { units: rows.map(({ all: _, ...unit }) => unit), all: rows[0]?.all ?? 0 };
}

const within = {
  place:
    "($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date",
  whose: "true",
};

function listed(measure: string, judging: Judging): string {
  const id = criterionId(measure);
  if (id !== undefined) {
    return `select practice, chair, clinician, worker, local_day, visit_id, canal, seq, shared, coalesce(excluded, excepted) as reason, null::float8 as value,
      case when excluded is not null then 'left-out' when excepted is not null then 'excepted' when met then 'met'
        when missing then 'not-recorded' else 'not-met' end as state
      from (${criterionUnits(id, judging)}) u`;
  }
  const { table, column } = continuousValue(measure) ?? {};
  if (table && column) {
    return `select practice, chair, clinician, worker, local_day, visit_id, ${table === "canal_facts" ? "canal" : "''"} as canal, null::int as seq, false as shared, exclusion as reason,
      ${column} as value, case when exclusion is not null then 'left-out' when ${column} is null then 'not-recorded' else 'recorded' end as state
      from ${table} where {place}`;
  }
  // Uses and instruments are listed by the canal they were used in.
  const visits = measure === "separation-per-visit";
  return `select practice, chair, clinician, worker, local_day, visit_id, ${visits ? "''" : "canal"} as canal, null::int as seq, false as shared, null::text as reason,
    null::float8 as value, case when separations > 0 then 'separated' when uses_unknown > 0 or uses_held > 0 then 'not-recorded' else 'no-separation' end as state
    from ${visits ? "visit_facts" : "canal_facts"} where {place} and uses + uses_held > 0`;
}
