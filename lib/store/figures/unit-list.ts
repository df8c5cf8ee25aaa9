import type { FiguresReach } from "@/lib/access/reach";
import { criterionOf } from "@/lib/protocol/criteria";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { criterionUnits } from "./criterion-sql";
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
  readonly state?: UnitState | undefined;
  readonly limit: number;
  readonly offset: number;
};

/** A page of the units behind a figure, latest first, and how many there are in all. Clinicians only where the reach tells them apart. */
export async function unitList(
  reach: FiguresReach,
  asked: UnitsAsked,
): Promise<{ units: ListedUnit[]; all: number }> {
  if (!reach.byClinician) throw new RangeError("this reach does not tell clinicians apart");
  const { rows } = await pool().query<ListedUnit & { all: number }>(
    `with units as (${listed(asked.measure).replaceAll("{within}", within)}),
     chosen as (select * from units where ($4::text is null or worker = $4) and ($5::text is null or state = $5))
     select u.practice, u.chair, u.clinician, u.local_day::text as day, v.session_id as "sessionId", v.tooth, nullif(u.canal, '') as canal,
       u.state, u.reason, u.value, (select count(*)::int from chosen) as all
     from chosen u left join sessions v on v.id = u.visit_id
     order by u.local_day desc, u.practice, u.chair, v.started_at desc, v.id, u.canal limit $6 offset $7`,
    [
      reach.practices,
      asked.period.from,
      asked.period.until,
      asked.clinician ?? null,
      asked.state ?? null,
      asked.limit,
      asked.offset,
    ],
  );
  return { units: rows.map(({ all: _, ...unit }) => unit), all: rows[0]?.all ?? 0 };
}

const within =
  "($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date";

function listed(measure: string): string {
  const criterion = criterionOf(measure);
  if (criterion) {
    return `select practice, chair, clinician, worker, local_day, visit_id, canal, coalesce(excluded, excepted) as reason, null::float8 as value,
      case when excluded is not null then 'left-out' when excepted is not null then 'excepted' when met then 'met'
        when missing then 'not-recorded' else 'not-met' end as state
      from (${criterionUnits(criterion)}) u`;
  }
  const { table, column } = continuousValue(measure) ?? {};
  if (table && column) {
    return `select practice, chair, clinician, worker, local_day, visit_id, ${table === "canal_facts" ? "canal" : "''"} as canal, exclusion as reason,
      ${column} as value, case when exclusion is not null then 'left-out' when ${column} is null then 'not-recorded' else 'recorded' end as state
      from ${table} where {within}`;
  }
  // Uses and instruments are listed by the canal they were used in.
  const visits = measure === "separation-per-visit";
  return `select practice, chair, clinician, worker, local_day, visit_id, ${visits ? "''" : "canal"} as canal, null::text as reason,
    null::float8 as value, case when separations > 0 then 'separated' when uses_unknown > 0 or uses_held > 0 then 'not-recorded' else 'no-separation' end as state
    from ${visits ? "visit_facts" : "canal_facts"} where {within} and uses + uses_held > 0`;
}
