import type { FiguresReach } from "@/lib/access/reach";
import type { Behind, Place } from "@/lib/measures/people-behind";
import { behindOf } from "@/lib/measures/units/behind-of";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";
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
 * From the units kept of months, where the periods are made of months.
 */
export async function patientsBehind(
  reach: FiguresReach,
  criterion: Criterion,
  periods: readonly Period[],
): Promise<Behind[]> {
  if (criterion.unit === "chair-day") return [];
  const months = monthsOfAll(periods);
  if (!months) return recomputed(reach, criterion, periods);
  const measure = criterionMeasure(criterion);
  const kept = await readMonths(reach.practices, months, [measure]);
  return behindOf(kept, { measure, periods, by: placesOf(criterion) });
}

function placesOf(criterion: Criterion): Place["kind"][] {
  return ["group", "practice", ...(criterion.byClinician ? [] : (["chair"] as const))];
}

/** The same from the records, whatever is kept. */
export async function recomputed(
  reach: FiguresReach,
  criterion: Criterion,
  periods: readonly Period[],
): Promise<Behind[]> {
  const measures = [criterionMeasure(criterion)];
  const protocol = await protocolWithin(reach);
  const lacking = await keptLacking(reach, protocol, measures, periods);
  const scope = scopeOf(reach, placesOf(criterion));
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
