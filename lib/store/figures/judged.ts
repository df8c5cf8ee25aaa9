import type { FiguresReach } from "@/lib/access/reach";
import type { ByReason } from "@/lib/measures/tally";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { protocolWithin } from "../protocol/versions";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { definedUnits } from "./criterion/units-sql";
import { keptLacking } from "./kept-lacking";

/** What a definition makes of the units of a period, whatever is in force. */
export type JudgedCounts = {
  readonly population: number;
  readonly met: number;
  readonly notMet: number;
  readonly notRecorded: number;
  readonly excluded: ByReason;
  readonly excepted: ByReason;
};

/** A unit and what became of it. */
export type JudgedExample = {
  readonly outcome: "met" | "not met" | "not recorded" | "excepted" | "excluded";
  readonly reason: string | null;
  readonly practice: string;
  /** Null for a chair's day. */
  readonly sessionId: string | null;
  readonly chair: string;
  /** Local day, YYYY-MM-DD. */
  readonly day: string;
  readonly tooth: string | null;
  readonly canal: string | null;
  readonly seq: number | null;
};

/** The units of a period counted by a definition that need not be in force. */
export async function judgedCounts(
  reach: FiguresReach,
  criterion: Criterion,
  period: Period,
): Promise<JudgedCounts> {
  const parameters = parametersOf(reach, period);
  const units = await unitsOf(reach, criterion, period, parameters);
  const { rows } = await pool().query<{ outcome: string; reason: string | null; units: number }>(
    `select ${outcome} as outcome, ${reason} as reason, sum(weight)::int as units from (${units}) u where not shared group by 1, 2`,
    parameters.values,
  );
  const of = (name: string) =>
    rows.reduce((sum, row) => sum + (row.outcome === name ? row.units : 0), 0);
  const reasons = (name: string): ByReason =>
    Object.fromEntries(
      rows.flatMap((row) => (row.outcome === name ? [[row.reason ?? "", row.units]] : [])),
    );
  return {
    population: rows.reduce((sum, row) => sum + row.units, 0),
    met: of("met"),
    notMet: of("not met"),
    notRecorded: of("not recorded"),
    excluded: reasons("excluded"),
    excepted: reasons("excepted"),
  };
}

/** Up to so many units of each outcome, the latest first. */
export async function judgedExamples(
  reach: FiguresReach,
  criterion: Criterion,
  period: Period,
  each: number,
): Promise<readonly JudgedExample[]> {
  const parameters = parametersOf(reach, period);
  const units = await unitsOf(reach, criterion, period, parameters);
  const { rows } = await pool().query<JudgedExample>(
    `with judged as (
      select *, ${outcome} as outcome, ${reason} as reason,
        row_number() over (partition by ${outcome} order by local_day desc, practice, chair, visit_id desc, canal, seq) as place
      from (${units}) u where not shared
    )
    select j.outcome, j.reason, j.practice, v.session_id as "sessionId", j.chair, j.local_day::text as day, v.tooth, nullif(j.canal, '') as canal, j.seq
    from judged j left join sessions v on v.id = j.visit_id where j.place <= ${parameters.bind(each, "float8")}
    order by j.outcome, j.place`,
    parameters.values,
  );
  return rows;
}

const outcome = `case when excluded is not null then 'excluded' when excepted is not null then 'excepted' when met then 'met'
  when missing then 'not recorded' else 'not met' end`;
const reason = "coalesce(excluded, excepted)";

function parametersOf(reach: FiguresReach, period: Period): Parameters {
  return new Parameters([reach.practices, period.from, period.until]);
}

async function unitsOf(
  reach: FiguresReach,
  criterion: Criterion,
  period: Period,
  parameters: Parameters,
): Promise<string> {
  const protocol = await protocolWithin(reach);
  const lacking = await keptLacking(reach, protocol, [criterionMeasure(criterion)], [period]);
  const judging = { protocol, parameters, lacking };
  return fillIn(definedUnits(criterion, judging), {
    place:
      "($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date",
    whose: "true",
  });
}
