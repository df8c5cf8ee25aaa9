import type { FiguresReach } from "@/lib/access/reach";
import type { Behind, Place } from "@/lib/measures/people-behind";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { protocolWithin } from "../protocol/versions";
import { Parameters } from "./criterion/parameters";
import { keptLacking } from "./kept-lacking";
import { scopeOf } from "./scope";
import { unitSql } from "./unit-sql";

type Row = {
  readonly kind: Place["kind"];
  readonly key: string;
  readonly practice: string | null;
  readonly chair: string | null;
  readonly period: number;
  readonly people: number;
  readonly eligible: number | null;
};

/**
 * How many patients are behind the units of a criterion by group, practice and, for what staff and equipment do together,
 * chair: all of them, and those with a unit that is not left out or excepted. Nothing of one whose units sit in no patient.
 */
export async function patientsBehind(
  reach: FiguresReach,
  criterion: Criterion,
  periods: readonly Period[],
): Promise<Behind[]> {
  if (criterion.unit === "chair-day") return [];
  const measures = [criterionMeasure(criterion)];
  const protocol = await protocolWithin(reach);
  const lacking = await keptLacking(reach, protocol, measures, periods);
  const scope = scopeOf(reach, [
    ...(["group", "practice"] as const),
    ...(criterion.byClinician ? [] : (["chair"] as const)),
  ]);
  const parameters = new Parameters(scope.parameters(periods));
  const units = unitSql(measures, { judging: { protocol, lacking, parameters } });
  const { rows } = await pool().query<Row>(
    `${scope.withCells(units, true)}
     select kind, key, case when kind <> 'group' then min(practice) end as practice, case when kind = 'chair' then min(chair) end as chair,
       period, count(distinct cluster)::int as people, least(
         nullif(count(distinct cluster) filter (where excluded is null), 0), nullif(count(distinct cluster) filter (where excluded is null and excepted is null), 0)
       )::int as eligible
     from subjects group by kind, key, period order by kind, key, period`,
    parameters.values,
  );
  return rows.map(({ kind, practice, chair, period, people, eligible }) => ({
    about:
      kind === "group"
        ? { kind }
        : kind === "practice"
          ? { kind, code: practice ?? "" }
          : { kind, practice: practice ?? "", code: chair ?? "" },
    period: periods[period]?.name ?? "",
    people,
    ...(eligible === null ? {} : { eligible }),
  }));
}
