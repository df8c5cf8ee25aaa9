import type { OwnReach } from "@/lib/access/reach";
import { pool } from "../database";
import { readOwn } from "./read-own";

/** Visits with units that count against a criterion, and how many there are at each; latest first. */
export type Missed = readonly { readonly visit: number; readonly units: number }[];

/**
 * Of each measure of a criterion, the clinician's own visits in the months with units that are not met or not recorded. Visits that the
 * clinician may not see are left out.
 */
export async function ownMissed(
  reach: OwnReach,
  measures: readonly string[],
  months: readonly string[],
): Promise<ReadonlyMap<string, Missed>> {
  const [own, visits] = await Promise.all([
    readOwn(reach, months, measures),
    readOwn(reach, months, [], true),
  ]);
  const idsOf = new Map(visits.map((one) => [keyOf(one), one.visits?.ids ?? []]));
  const missed = new Map(measures.map((measure) => [measure, new Map<number, number>()]));
  for (const one of own)
    for (const [measure, some] of one.units)
      for (const { excluded, excepted, numerator, visits } of some) {
        if (excluded !== null || excepted !== null || numerator !== 0) continue;
        const units = missed.get(measure);
        for (const at of visits) {
          const visit = typeof at === "number" ? idsOf.get(keyOf(one))?.[at] : undefined;
          if (visit !== undefined) units?.set(visit, (units.get(visit) ?? 0) + 1);
        }
      }
  const inOrder = await latestFirst([...missed.values()].flatMap((units) => [...units.keys()]));
  return new Map(
    [...missed].map(([measure, units]) => [
      measure,
      inOrder.flatMap((visit) => {
        const its = units.get(visit);
        return its === undefined ? [] : [{ visit, units: its }];
      }),
    ]),
  );
}

function keyOf({ practice, month }: { practice: string; month: string }): string {
  return `${practice}\n${month}`;
}

async function latestFirst(visits: readonly number[]): Promise<number[]> {
  const { rows } = await pool().query<{ id: string }>(
    "select id::text from sessions where id = any($1::bigint[]) order by local_day desc, started_at desc, id",
    [[...new Set(visits)]],
  );
  return rows.map(({ id }) => Number(id));
}
