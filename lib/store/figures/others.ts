import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { ClusterCounts, ClusteredMedian, MedianEnds } from "@/lib/measures/tally";
import { othersOf } from "@/lib/measures/units/others-of";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";
import { protocolWithin } from "../protocol/versions";
import { type ClusterRow, clusterSums, clustersOf } from "./cluster-sums-sql";
import { type ComparedWith, comparedWith, type Pair, type Target } from "./compared-with";
import { Parameters } from "./criterion/parameters";
import type { Judging } from "./criterion/units-sql";
import { keptLacking } from "./kept-lacking";
import { othersOrders } from "./others-orders";
import { beside, parameters as first } from "./others-sql";
import { isContinuous } from "./unit-sql";

/** A comparison stands only where at least so many other clinicians have at least so many units each. */
export const leastClinicians = 5;
export const leastUnits = 10;

export type OthersAsked = {
  /** Ids of measures, or criterion/<id>, that are told apart by clinician. */
  readonly measures: readonly string[];
  readonly periods: readonly Period[];
  readonly targets: readonly Target[];
  readonly comparison: ComparedWith;
  readonly ends: MedianEnds;
};

/** The units of a clinician's others as counts and order statistics; never one clinician's. */
export type Others = Target & {
  readonly measure: string;
  readonly n: number;
  /** Of a rate, how many of the n; null of a continuous measure. */
  readonly numerator: number | null;
  /** Of a rate, what the variance between the others' patients needs. */
  readonly clusters: ClusterCounts | null;
  readonly median: number | null;
  readonly quartiles: readonly [number, number] | null;
  readonly bounds: readonly [number, number] | null;
  readonly clustered: ClusteredMedian | null;
};

type Counts = Target & ClusterRow & { measure: string; n: number; numerator: number | null };

/**
 * What a clinician's others come to, without the clinician's own units. A measure has an answer only where at least
 * five other clinicians have at least ten units each and none has over half of all the others' units; the rule is
 * applied here, so that no page can show what falls short of it. A reach of one's own asks for oneself alone.
 */
export async function others(
  reach: FiguresReach | OwnReach,
  asked: OthersAsked,
): Promise<Others[]> {
  const pairs = await comparedWith(reach, asked.periods, asked.targets, asked.comparison);
  if (pairs.length === 0) return [];
  return (await ofMonths(asked, pairs)) ?? recomputed(reach, asked, pairs);
}

/** From the units kept of months, where months are what is asked for. */
async function ofMonths(asked: OthersAsked, pairs: readonly Pair[]): Promise<Others[] | undefined> {
  const months = monthsOfAll(asked.periods);
  if (!months) return undefined;
  const practices = [...new Set(pairs.map(({ practice }) => practice))];
  const units = await readMonths(practices, months, asked.measures);
  return othersOf(units, { ...asked, pairs, isContinuous, stands });
}

/** Are there enough others with enough units, none of them with over half of all. */
function stands(units: readonly number[]): boolean {
  const all = units.reduce((total, some) => total + some, 0);
  const enough = units.filter((some) => some >= leastUnits).length >= leastClinicians;
  return enough && Math.max(...units) * 2 <= all;
}

/** The same from the records, whatever is kept. */
export async function recomputed(
  reach: FiguresReach | OwnReach,
  asked: OthersAsked,
  pairs: readonly Pair[],
): Promise<Others[]> {
  const protocol = await protocolWithin(reach);
  // Rates need counts alone, medians a second look: the two go side by side.
  const kinds = [
    asked.measures.filter(isContinuous),
    asked.measures.filter((measure) => !isContinuous(measure)),
  ];
  const found = kinds
    .filter((measures) => measures.length > 0)
    .map(async (measures) => {
      const lacking = within(reach, pairs)
        ? await keptLacking(reach, protocol, measures, asked.periods)
        : undefined;
      return standingOf({ ...asked, measures }, pairs, { protocol, lacking });
    });
  return (await Promise.all(found)).flat();
}

/** The comparisons that stand, of measures of one kind. */
async function standingOf(
  asked: OthersAsked,
  pairs: readonly Pair[],
  judging: Omit<Judging, "parameters">,
): Promise<Others[]> {
  const parameters = new Parameters(first(asked.periods, pairs));
  const { rows } = await pool().query<Counts>(
    `${beside(asked.measures, { ...judging, parameters })}, each as (
      select worker, period, measure, other, sum(units) as units, sum(numerator) as numerator
      from beside group by worker, period, measure, other
    ), standing as (
      select worker, period, measure, sum(units)::int as n, sum(numerator)::int as numerator
      from each group by worker, period, measure
      having count(*) filter (where units >= ${leastUnits}) >= ${leastClinicians} and max(units) * 2 <= sum(units)
    ), pooled as (
      select worker, period, measure, cluster, sum(coalesce(b.numerator, 0)) as e, sum(b.units) as u
      from beside b join standing using (worker, period, measure) where cluster is not null group by worker, period, measure, cluster
    ), sums as (
      select worker, period, measure, ${clusterSums} from pooled group by worker, period, measure
    )
    select * from standing left join sums using (worker, period, measure)`,
    parameters.values,
  );
  const ordered = await othersOrders(
    asked,
    pairs,
    rows.filter((row) => isContinuous(row.measure)),
  );
  return rows.map((row) => {
    const { worker, period, measure, n, numerator } = row;
    const clusters = numerator === null ? null : clustersOf(row);
    const order = ordered.get(`${worker}\n${period}\n${measure}`);
    return { worker, period, measure, n, numerator, clusters, ...nothing, ...order };
  });
}

/** Peers may have worked at practices beyond the reach. */
function within(reach: FiguresReach | OwnReach, pairs: readonly Pair[]): boolean {
  if ("clinicianKey" in reach) return false;
  const { practices } = reach;
  return practices === null || pairs.every(({ practice }) => practices.includes(practice));
}

const nothing = { median: null, quartiles: null, bounds: null, clustered: null } as const;
