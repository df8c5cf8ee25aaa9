import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { MedianTally, RateTally, Tally } from "@/lib/measures/tally";
import { criterionId } from "@/lib/protocol/criterion";
import { defaultProtocol, type Protocol, standingOf } from "@/lib/protocol/protocol";
import { pool } from "../database";
import { protocolWithin } from "../protocol/versions";
import { clusterSums, clustersOf } from "./cluster-sums-sql";
import type { Asked, CountRow } from "./counted";
import { Parameters } from "./criterion/parameters";
import type { Judging } from "./criterion/units-sql";
import { instrumentCounts } from "./instruments";
import { keptLacking } from "./kept-lacking";
import { medians, type Order } from "./medians";
import { scopeOf } from "./scope";
import { stratumOf } from "./stratum-sql";
import { subjectColumns, subjectOf } from "./subject-of";
import { talliesOfMonths } from "./tallies-of-months";
import { isContinuous, unitSql } from "./unit-sql";

/**
 * Counts and order statistics of measures and criteria, for each period and subject that has units, in the order of
 * the subjects' codes: from the units kept of months, where months are what is asked for, else counted in PostgreSQL.
 */
export async function tallies(reach: FiguresReach | OwnReach, asked: Asked): Promise<Tally[]> {
  return (await talliesOfMonths(reach, asked)) ?? recomputed(reach, asked);
}

/** The same from the records, whatever is kept. */
export async function recomputed(reach: FiguresReach | OwnReach, asked: Asked): Promise<Tally[]> {
  const scope = scopeOf(reach, asked.by);
  const perInstrument = asked.measures.includes("separation-per-instrument");
  const others = asked.measures.filter((measure) => measure !== "separation-per-instrument");
  const protocol = asked.measures.some((measure) => criterionId(measure) !== undefined)
    ? await protocolWithin(reach)
    : defaultProtocol;
  const counted = await Promise.all(
    together(others).map(async (measures) => {
      const lacking = await keptLacking(reach, protocol, measures, asked.periods);
      return counts(scope, { ...asked, measures }, { protocol, lacking });
    }),
  );
  const rows = counted.flat();
  if (perInstrument) rows.push(...(await instrumentCounts(scope, asked)));
  const grouped = new Map<string, CountRow[]>();
  for (const row of rows) {
    const key = [row.measure, row.period, row.kind, row.key].join("\n");
    grouped.set(key, [...(grouped.get(key) ?? []), row]);
  }
  const ordered = asked.countsAlone
    ? new Map<number, Order>()
    : await medians(scope, asked, [...grouped.values()]);
  const practices = "practices" in reach ? reach.practices : null;
  return [...grouped.values()].map((some, place) => ({
    ...tallyOf(some, asked, ordered.get(place)),
    ...judgedBy(protocol, practices, some, asked),
  }));
}

/** Measures that one query counts: what reads the same rows together, and criteria a few at a time, side by side. */
function together(measures: readonly string[]): string[][] {
  const criteria = measures.filter((measure) => criterionId(measure) !== undefined);
  const others = measures.filter((measure) => criterionId(measure) === undefined);
  const groups = Array.from({ length: Math.ceil(criteria.length / criteriaAtATime) }, (_, place) =>
    criteria.filter((_one, at) => Math.floor(at / criteriaAtATime) === place),
  );
  return [...(others.length > 0 ? [others] : []), ...groups];
}

const criteriaAtATime = 4;

async function counts(
  scope: ReturnType<typeof scopeOf>,
  asked: Asked,
  judging: Omit<Judging, "parameters">,
): Promise<CountRow[]> {
  const parameters = new Parameters(scope.parameters(asked.periods));
  const units = unitSql(asked.measures, { ...asked, judging: { ...judging, parameters } });
  const { rows } = await pool().query<CountRow>(
    `${scope.withCells(units, !asked.countsAlone)}, counts as (
    select measure, period, kind, key, ${subjectColumns},
      excluded, excepted, sum(units)::int as units, sum(numerator)::int as numerator, sum(denominator)::int as denominator,
      sum(missing)::int as missing, sum(n)::int as n
    from subjects group by measure, period, kind, key, excluded, excepted
    ), ${patients}
    select * from counts left join sums using (measure, period, kind, key)
    order by measure, period, kind, practice, code, key, excluded, excepted`,
    parameters.values,
  );
  return rows;
}

/** By which version a criterion's units were judged, in the practices that the subject has units in. */
function judgedBy(
  protocol: Protocol,
  within: readonly string[] | null,
  rows: readonly CountRow[],
  asked: Asked,
): Pick<Tally, "criterion" | "changedOn" | "targetsDiffer"> {
  const [first] = rows;
  const id = first && criterionId(first.measure);
  const period = first && asked.periods[first.period];
  if (id === undefined || !period) return {};
  const practices = rows.flatMap(({ practice }) => practice ?? []);
  const own = first.kind === "group" || practices.length < rows.length ? within : practices;
  return standingOf(protocol, id, own, period) ?? {};
}

function tallyOf(rows: readonly CountRow[], asked: Asked, order: Order | undefined): Tally {
  const [first] = rows;
  const period = first && asked.periods[first.period];
  if (!first || !period) throw new Error("a group of counts has no rows or no period");
  const counted = {
    ...stratumOf(first.measure),
    subject: subjectOf(rows),
    period,
    population: sum(rows, (row) => row.units),
    excluded: byReason(rows, (row) => row.excluded),
    excepted: byReason(rows, (row) => row.excepted),
    notRecorded: sum(rows, (row) => row.missing),
  };
  if (isContinuous(first.measure)) {
    const tally: MedianTally = {
      ...counted,
      kind: "median",
      n: sum(rows, (row) => row.n),
      median: null,
      quartiles: null,
      bounds: null,
      clustered: null,
      ...order,
    };
    return tally;
  }
  const numerator = sum(rows, (row) => row.numerator ?? 0);
  const denominator = sum(rows, (row) => row.denominator ?? 0);
  const missingWithin = first.measure.startsWith("criterion/") ? counted.notRecorded : 0;
  const tally: RateTally = {
    ...counted,
    kind: "rate",
    numerator,
    denominator,
    notMet: denominator - numerator - missingWithin,
    clusters: clustersOf(first),
  };
  return tally;
}

/** SQL: `sums`, what the variance between a subject's patients needs. */
const patients = `patients as (
      select measure, period, kind, key, cluster, sum(coalesce(numerator, 0))::float8 as e, sum(coalesce(denominator, n))::float8 as u
      from subjects where cluster is not null group by measure, period, kind, key, cluster having sum(coalesce(denominator, n)) > 0
    ), sums as (
      select measure, period, kind, key, ${clusterSums} from patients group by measure, period, kind, key
    )`;

function byReason(
  rows: readonly CountRow[],
  reasonOf: (row: CountRow) => string | null,
): Record<string, number> {
  const found: Record<string, number> = {};
  for (const row of rows) {
    const reason = reasonOf(row);
    if (reason !== null) found[reason] = (found[reason] ?? 0) + row.units;
  }
  return found;
}

function sum(rows: readonly CountRow[], numberOf: (row: CountRow) => number): number {
  return rows.reduce((total, row) => total + numberOf(row), 0);
}
