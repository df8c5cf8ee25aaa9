import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { OpportunityTally } from "@/lib/measures/opportunities";
import type { SubjectKind } from "@/lib/measures/tally";
import { opportunitiesOf } from "@/lib/measures/units/opportunities-of";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { criteriaOf, type Protocol } from "@/lib/protocol/protocol";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { measuresOfLacking } from "../month-units/lacking-of";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";
import { readOwn } from "../month-units/read-own";
import { protocolWithin } from "../protocol/versions";
import { type ClusterRow, clusterSums, clustersOf } from "./cluster-sums-sql";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { criterionUnits, type Judging } from "./criterion/units-sql";
import { scopeOf } from "./scope";
import { type SubjectRow, subjectColumns, subjectOf } from "./subject-of";

type Row = SubjectRow &
  ClusterRow & {
    readonly period: number;
    readonly unrecorded: number;
    readonly visits: number;
    readonly wholeVisits: number;
    readonly unrecordedVisits: number;
    readonly parts: OpportunityTally["byCriterion"];
  };

type Asked = {
  readonly periods: readonly Period[];
  readonly by: readonly Exclude<SubjectKind, "chair">[];
};

/**
 * Opportunities by group, practice or clinician for each period: from the units kept of months, where they tell, else counted in
 * PostgreSQL. A clinician's are those of their own visits, whoever worked on a canal there, and only of criteria that are told
 * apart by clinician.
 */
export async function opportunities(
  reach: FiguresReach | OwnReach,
  asked: Asked,
): Promise<OpportunityTally[]> {
  const protocol = await protocolWithin(reach);
  return (await ofMonths(reach, asked, protocol)) ?? recomputed(reach, asked, protocol);
}

async function ofMonths(
  reach: FiguresReach | OwnReach,
  asked: Asked,
  protocol: Protocol,
): Promise<OpportunityTally[] | undefined> {
  const counting = measuresOfLacking(protocol);
  const months = monthsOfAll(asked.periods);
  if (!months || !counting) return undefined;
  const criteria = criteriaOf(protocol)
    .map(({ id }) => ({ id, measure: criterionMeasure({ id }) }))
    .filter(({ measure }) => counting.includes(measure));
  if ("clinicianKey" in reach) {
    const units = await readOwn(reach, months, counting, true);
    const all = opportunitiesOf(units, { criteria, periods: asked.periods, by: ["clinician"] });
    return all.filter(
      ({ subject }) => subject.kind === "clinician" && subject.key === reach.clinicianKey,
    );
  }
  const units = await readMonths(reach.practices, months, counting, true);
  const by = asked.by.filter((kind) => kind !== "clinician" || reach.byClinician);
  return opportunitiesOf(units, { criteria, periods: asked.periods, by });
}

/** The same from the records, whatever is kept. */
export async function recomputed(
  reach: FiguresReach | OwnReach,
  asked: Asked,
  protocol: Protocol,
): Promise<OpportunityTally[]> {
  const scope = scopeOf(reach, asked.by);
  const parameters = new Parameters(scope.parameters(asked.periods));
  const units = opportunitySql({ protocol, parameters }, "clinicianKey" in reach);
  const { rows } = await pool().query<Row>(
    `${scope.withUnits(units)}, theirs as (
      select * from subjects where kind <> 'clinician' or by_clinician
    ), visits as (
      select period, kind, key, visit_id, count(*)::float8 as u, (count(*) filter (where met))::float8 as e, bool_or(missed) as missed
      from theirs group by period, kind, key, visit_id
    ), sums as (
      select period, kind, key, ${clusterSums}, count(*)::int as visits, (count(*) filter (where e = u))::int as "wholeVisits",
        (count(*) filter (where e < u and not missed))::int as "unrecordedVisits"
      from visits group by period, kind, key
    ), counted as (
      select period, kind, key, criterion, count(*) as n, count(*) filter (where met) as met, count(*) filter (where not met and not missed) as unrecorded
      from theirs group by period, kind, key, criterion
    ), parts as (
      select period, kind, key, sum(unrecorded)::int as unrecorded,
        jsonb_agg(jsonb_build_object('criterion', criterion, 'met', met, 'of', n, 'notRecorded', unrecorded)) as parts
      from counted group by period, kind, key
    ), named as (
      select period, kind, key, ${subjectColumns} from theirs group by period, kind, key
    )
    select * from named join sums using (period, kind, key) join parts using (period, kind, key)
    order by period, kind, practice, code, key`,
    parameters.values,
  );
  const order = criteriaOf(protocol).map(({ id }) => id);
  return rows.map((row) => tallyOf(row, asked.periods, order));
}

/**
 * A query giving each opportunity as a unit of its visit: whether it was met, else whether something was not met, and
 * whether it is of a clinician. Units that are nobody's have no worker; the visit has one, which is where `own` looks.
 */
function opportunitySql(judging: Judging, own: boolean): string {
  const parts = criteriaOf(judging.protocol).map(
    ({
      id,
    }) => `select visit_id, ${judging.parameters.bind(id, "text")} as criterion, met, missing, worker
      from (${criterionUnits(id, judging, { scored: true })}) g
      where not shared and excluded is null and excepted is null`,
  );
  const units = fillIn(parts.join("\nunion all\n"), {
    place: own
      ? "{place} and visit_id in (select visit_id from visit_facts where worker = $5)"
      : "{place}",
    whose: "true",
  });
  return `
    select f.practice, f.chair, f.clinician, f.worker, f.local_day, f.visit_id, false as shared, o.criterion, o.met, o.missed, o.by_clinician
    from (
      select visit_id, criterion, bool_and(met) as met, bool_or(not met and not missing) as missed, bool_or(worker is not null) as by_clinician
      from (${units}) u group by visit_id, criterion
    ) o join visit_facts f using (visit_id)`;
}

function tallyOf(row: Row, periods: readonly Period[], order: readonly string[]): OpportunityTally {
  const period = periods[row.period];
  const clusters = clustersOf(row);
  if (!period || !clusters) throw new Error("counts of opportunities have no period or no visit");
  return {
    subject: subjectOf([row]),
    period,
    opportunities: {
      met: clusters.events,
      of: clusters.units,
      notRecorded: row.unrecorded,
    },
    visits: { met: row.wholeVisits, of: row.visits, notRecorded: row.unrecordedVisits },
    clusters,
    byCriterion: row.parts
      .map(({ criterion, met, of, notRecorded }) => ({ criterion, met, of, notRecorded }))
      .sort((one, other) => order.indexOf(one.criterion) - order.indexOf(other.criterion)),
  };
}
