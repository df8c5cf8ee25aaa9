import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { leastClinicians, leastUnits } from "../figures/others";
import { unitsInOrder } from "./separations-in-order";

/** Visits that are alike in their canals' cases and outcomes, and how many there are; no clinician is told apart. */
export type VisitPattern = {
  readonly canals: readonly { readonly case: string; readonly event: boolean }[];
  readonly visits: number;
};

/**
 * The visits of everyone within the reach, as patterns: what a baseline is drawn from. A reach of one's own has those of
 * everyone at its practices, and only where as many others stand behind them as behind a comparison.
 */
export async function visitPatterns(
  reach: FiguresReach | OwnReach,
  period: Period,
): Promise<VisitPattern[]> {
  const own = "clinicianKey" in reach;
  const practices = own ? await practicesOf(reach, period) : reach.practices;
  const { rows } = await pool().query<{ cases: string[]; events: boolean[]; visits: number }>(
    `with units as (${unitsInOrder("canal")}), others as (
      select count(*) filter (where units >= ${leastUnits}) >= ${leastClinicians} and max(units) * 2 <= sum(units) as stand
      from (select worker, count(*) as units from units where worker is distinct from $6 group by worker) each
    ), visits as (
      select array_agg("case" order by "case", event) as cases, array_agg(event order by "case", event) as events
      from units group by visit_id
    )
    select cases, events, count(*)::int as visits from visits
    where $6::text is null or (select stand from others) group by cases, events order by cases, events`,
    [practices, null, null, period.from, period.until, own ? reach.clinicianKey : null],
  );
  return rows.map(({ cases, events, visits }) => ({
    visits,
    canals: cases.map((one, place) => ({ case: one, event: events[place] === true })),
  }));
}

/** The practices at which the clinician treated in the period. */
async function practicesOf(reach: OwnReach, period: Period): Promise<string[]> {
  const { rows } = await pool().query<{ practice: string }>(
    "select distinct practice from canal_facts where worker = $1 and local_day >= $2::date and local_day < $3::date",
    [reach.clinicianKey, period.from, period.until],
  );
  return rows.map(({ practice }) => practice);
}
