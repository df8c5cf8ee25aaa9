import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { MedianRanks } from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { type ComparedWith, comparedWith, type Pair, type Target } from "./compared-with";
import { isContinuous, unitSql } from "./unit-sql";

/** A comparison stands only where at least so many other clinicians have at least so many units each. */
const leastClinicians = 5;
const leastUnits = 10;

export type OthersAsked = {
  /** Ids of measures, or criterion/<id>, that are told apart by clinician. */
  readonly measures: readonly string[];
  readonly periods: readonly Period[];
  readonly targets: readonly Target[];
  readonly comparison: ComparedWith;
  readonly ranks: MedianRanks;
};

/** The units of a clinician's others as counts and order statistics; never one clinician's. */
export type Others = Target & {
  readonly measure: string;
  readonly n: number;
  /** Of a rate, how many of the n; null of a continuous measure. */
  readonly numerator: number | null;
  readonly median: number | null;
  readonly quartiles: readonly [number, number] | null;
  readonly bounds: readonly [number, number] | null;
};

type Counts = Target & { measure: string; n: number; numerator: number | null };
type Order = Target & {
  measure: string;
  quartiles: [number, number, number];
  lower: number | null;
  upper: number | null;
};

/**
 * What a clinician's others come to, without the clinician's own units. A measure has an answer only where at least
 * five other clinicians have at least ten units each and none has over half of all the others' units; the rule is
 * part of the query, so that no page can show what falls short of it. A reach of one's own asks for oneself alone.
 */
export async function others(
  reach: FiguresReach | OwnReach,
  asked: OthersAsked,
): Promise<Others[]> {
  const pairs = await comparedWith(reach, asked.periods, asked.targets, asked.comparison);
  if (pairs.length === 0) return [];
  // Rates need counts alone, medians a second look: the two go side by side.
  const kinds = [
    asked.measures.filter(isContinuous),
    asked.measures.filter((measure) => !isContinuous(measure)),
  ];
  const found = kinds
    .filter((measures) => measures.length > 0)
    .map((measures) => standingOf({ ...asked, measures }, pairs));
  return (await Promise.all(found)).flat();
}

/** The comparisons that stand, of measures of one kind. */
async function standingOf(asked: OthersAsked, pairs: readonly Pair[]): Promise<Others[]> {
  const counted = await pool().query<Counts>(
    `${beside(asked.measures)}, each as (
      select c.worker, c.period, u.measure, c.other, sum(u.units) as units, sum(u.numerator) as numerator
      from compared c join cells u using (period, practice, other) group by c.worker, c.period, u.measure, c.other
    )
    select worker, period, measure, sum(units)::int as n, sum(numerator)::int as numerator
    from each group by worker, period, measure
    having count(*) filter (where units >= ${leastUnits}) >= ${leastClinicians} and max(units) * 2 <= sum(units)`,
    parameters(asked.periods, pairs),
  );
  const standing = counted.rows.filter((row) => isContinuous(row.measure));
  const ordered = await orders(asked, pairs, standing);
  return counted.rows.map((row) => ({ ...nothing, ...row, ...ordered.get(keyOf(row)) }));
}

/** Median, quartiles (type 7) and the order statistics that bound the median, of the comparisons that stand. */
async function orders(asked: OthersAsked, pairs: readonly Pair[], standing: readonly Counts[]) {
  if (standing.length === 0) return new Map<string, never>();
  const at = standing.map(({ n }) => {
    const ranks = asked.ranks(n);
    return ranks ? [(ranks.lower - 0.5) / n, (ranks.upper - 0.5) / n] : [null, null];
  });
  const { rows } = await pool().query<Order>(
    `${beside(asked.measures.filter(isContinuous))}, standing as (
      select * from unnest($9::text[], $10::int[], $11::text[], $12::float8[], $13::float8[]) as s(worker, period, measure, low, high)
    )
    select s.worker, s.period, s.measure, percentile_cont(array[0.25, 0.5, 0.75]) within group (order by value) as quartiles,
      percentile_disc(s.low) within group (order by value) as lower, percentile_disc(s.high) within group (order by value) as upper
    from standing s join compared c on c.worker = s.worker and c.period = s.period
    join cells u on u.measure = s.measure and u.period = c.period and u.practice = c.practice and u.other = c.other
    cross join lateral unnest(u.values) as value
    group by s.worker, s.period, s.measure, s.low, s.high`,
    [
      ...parameters(asked.periods, pairs),
      standing.map((row) => row.worker),
      standing.map((row) => row.period),
      standing.map((row) => row.measure),
      at.map(([low]) => low),
      at.map(([, high]) => high),
    ],
  );
  return new Map(rows.map((row) => [keyOf(row), orderOf(row)]));
}

/**
 * SQL: `compared`, the pairs, and `cells`, what each clinician did at each practice in each period. The cells are few
 * and carry their values, so that no join runs over the units themselves.
 */
function beside(measures: readonly string[]): string {
  const within = `local_day >= (select min(since) from periods) and local_day < (select max(until) from periods)
    and practice = any($8::text[])`;
  return `
    with periods as (
      select * from unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until)
    ), compared as (
      select * from unnest($4::text[], $5::int[], $6::text[], $7::text[]) as c(worker, period, practice, other)
    ), units as (${unitSql(measures).replaceAll("{within}", within)})
    , cells as materialized (
      select u.measure, p.period, u.practice, u.worker as other, sum(coalesce(u.denominator, 1)) as units,
        sum(u.numerator) as numerator, array_agg(u.value) as values
      from units u join periods p on u.local_day >= p.since and u.local_day < p.until
      where u.excluded is null and u.excepted is null and u.worker is not null and (u.value is not null or u.denominator > 0)
      group by u.measure, p.period, u.practice, u.worker
    )`;
}

function parameters(periods: readonly Period[], pairs: readonly Pair[]): unknown[] {
  return [
    periods.map((_, place) => place),
    periods.map((period) => period.from),
    periods.map((period) => period.until),
    pairs.map((pair) => pair.worker),
    pairs.map((pair) => pair.period),
    pairs.map((pair) => pair.practice),
    pairs.map((pair) => pair.other),
    [...new Set(pairs.map((pair) => pair.practice))],
  ];
}

function orderOf(row: Order): Pick<Others, "median" | "quartiles" | "bounds"> {
  const [q1, median, q3] = row.quartiles;
  const bounds =
    row.lower === null || row.upper === null ? null : ([row.lower, row.upper] as const);
  return { median, quartiles: [q1, q3], bounds };
}

function keyOf(of: Target & { measure: string }): string {
  return [of.worker, of.period, of.measure].join("\n");
}

const nothing = { median: null, quartiles: null, bounds: null } as const;
