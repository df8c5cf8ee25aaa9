import type { OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { scopeOf } from "./scope";
import { isContinuous, unitSql } from "./unit-sql";

/** The lowest and highest of a measure's values. */
export type Ends = { readonly measure: string; readonly lowest: number; readonly highest: number };

/** Bins of equal width from `from`; the last one takes its upper end in. */
export type Bins = {
  readonly measure: string;
  readonly from: number;
  readonly width: number;
  readonly count: number;
};

/** The ends of the clinician's own values of each continuous measure that has any. */
export async function ownEnds(
  reach: OwnReach,
  measures: readonly string[],
  period: Period,
): Promise<Ends[]> {
  const continuous = measures.filter(isContinuous);
  if (continuous.length === 0) return [];
  const scope = scopeOf(reach, ["clinician"]);
  const { rows } = await pool().query<Ends>(
    `${scope.withUnits(unitSql(continuous))}
    select measure, min(value) as lowest, max(value) as highest from subjects
    where excluded is null and value is not null group by measure`,
    scope.parameters([period]),
  );
  return rows;
}

/** How many of the clinician's own units lie in each bin, by measure, from the first bin to the last. */
export async function ownSpread(
  reach: OwnReach,
  period: Period,
  bins: readonly Bins[],
): Promise<Map<string, number[]>> {
  const counts = new Map(
    bins.map((one) => [one.measure, Array.from({ length: one.count }, () => 0)]),
  );
  if (bins.length === 0) return counts;
  const scope = scopeOf(reach, ["clinician"]);
  const { rows } = await pool().query<{ measure: string; bin: number; units: number }>(
    `${scope.withUnits(unitSql(bins.map((one) => one.measure)))}, bins as (
      select * from unnest($9::text[], $10::float8[], $11::float8[], $12::int[]) as b(measure, low, width, count)
    )
    select u.measure, least(greatest(floor((u.value - b.low) / b.width)::int, 0), b.count - 1) as bin, count(*)::int as units
    from subjects u join bins b using (measure) where u.excluded is null and u.value is not null group by 1, 2`,
    [
      ...scope.parameters([period]),
      bins.map((one) => one.measure),
      bins.map((one) => one.from),
      bins.map((one) => one.width),
      bins.map((one) => one.count),
    ],
  );
  for (const { measure, bin, units } of rows) counts.get(measure)?.splice(bin, 1, units);
  return counts;
}
