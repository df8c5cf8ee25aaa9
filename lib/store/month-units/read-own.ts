import type { OwnReach } from "@/lib/access/reach";
import type { MonthUnits } from "@/lib/measures/units/alike";
import { practicesOf } from "../figures/practices-of";
import { comparing } from "../wall/as-whom";
import { readMonths } from "./read-months";

/**
 * The units of measures in months that are the clinician's own. They are kept with those of the practice's others, which are read past
 * the wall and left out here; `withVisits` for what is counted of visits, where nothing is left out.
 */
export function readOwn(
  reach: OwnReach,
  months: readonly string[],
  measures: readonly string[],
  withVisits = false,
): Promise<MonthUnits[]> {
  return comparing(async () => {
    const practices = await practicesOf(reach);
    const all =
      practices.length === 0 ? [] : await readMonths(practices, months, measures, withVisits);
    return withVisits ? all : all.map((one) => ({ ...one, units: ownOf(one, reach) }));
  });
}

function ownOf({ units }: MonthUnits, { clinicianKey }: OwnReach): MonthUnits["units"] {
  return new Map(
    [...units].map(([measure, some]) => [
      measure,
      some.filter(({ worker }) => worker === clinicianKey),
    ]),
  );
}
