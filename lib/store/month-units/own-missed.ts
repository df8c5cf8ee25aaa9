import type { OwnReach } from "@/lib/access/reach";
import type { MonthUnits } from "@/lib/measures/units/alike";
import type { Protocol } from "@/lib/protocol/protocol";
import { pool } from "../database";
import type { Lacking } from "../figures/criterion/units-sql";
import { comparing } from "../wall/as-whom";
import { lackingOf, measuresOfLacking } from "./lacking-of";
import { readMonths } from "./read-months";

/** Visits with units that count against a criterion, and how many there are at each; latest first. */
export type Missed = readonly { readonly visit: number; readonly units: number }[];

/** What a clinician's work is judged by, and where it may be. */
export type OwnSight = { readonly protocol: Protocol; readonly practices: readonly string[] };

/** What of each measure counts against the clinician, and what visits lack, in the words of a query. */
export type OwnMissed = {
  readonly of: ReadonlyMap<string, Missed>;
  /** What the criteria lack at the visits; undefined where what is kept does not say. */
  lackingAt(visits: readonly number[]): Lacking | undefined;
};

/**
 * Of each measure of a criterion, the clinician's own visits in the months with units that are not met or not recorded. Visits that the
 * clinician may not see are left out.
 */
export async function ownMissed(
  reach: OwnReach,
  { protocol, practices }: OwnSight,
  measures: readonly string[],
  months: readonly string[],
): Promise<OwnMissed> {
  const overall = measuresOfLacking(protocol);
  const asked = [...new Set([...measures, ...(overall ?? [])])];
  const kept = await comparing(() => readMonths(practices, months, asked, true));
  const missed = new Map(measures.map((measure) => [measure, ownOf(reach, measure, kept)]));
  const inOrder = await latestFirst([...missed.values()].flatMap((units) => [...units.keys()]));
  return {
    of: new Map(
      [...missed].map(([measure, units]) => [
        measure,
        inOrder.flatMap((visit) => {
          const its = units.get(visit);
          return its === undefined ? [] : [{ visit, units: its }];
        }),
      ]),
    ),
    lackingAt: (visits) => overall && lackingOf(protocol, kept, new Set(visits)),
  };
}

/** How many units of a measure count against the clinician at each visit. */
function ownOf(
  { clinicianKey }: OwnReach,
  measure: string,
  months: readonly MonthUnits[],
): Map<number, number> {
  const found = new Map<number, number>();
  for (const { visits, units } of months)
    for (const { worker, excluded, excepted, numerator, ...one } of units.get(measure) ?? []) {
      if (worker !== clinicianKey || excluded !== null || excepted !== null || numerator !== 0)
        continue;
      for (const at of one.visits) {
        const visit = typeof at === "number" ? visits?.ids[at] : undefined;
        if (visit !== undefined) found.set(visit, (found.get(visit) ?? 0) + 1);
      }
    }
  return found;
}

async function latestFirst(visits: readonly number[]): Promise<number[]> {
  const { rows } = await pool().query<{ id: string }>(
    "select id::text from sessions where id = any($1::bigint[]) order by local_day desc, started_at desc, id",
    [[...new Set(visits)]],
  );
  return rows.map(({ id }) => Number(id));
}
