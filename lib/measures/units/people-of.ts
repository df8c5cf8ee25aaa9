import type { Period } from "@/lib/records/period";
import type { Behind } from "../people-behind";
import type { Alike, MonthUnits } from "./alike";
import { behindOf } from "./behind-of";

/** A measure with a unit for every canal, whoever worked in it. */
export const ofEveryCanal = "irrigation-time";

/**
 * How many patients are behind the visits of each place, and how many clinicians behind those of each practice, in periods made of
 * whole months. A clinician is whoever a visit is of, or a canal of it.
 *
 * @param months with their visits and the units of `ofEveryCanal`
 */
export function peopleOf(
  months: readonly MonthUnits[],
  periods: readonly Period[],
): { patients: Behind[]; clinicians: Behind[] } {
  const asUnits = months.map((month) => ({ ...month, units: new Map([[visits, unitsOf(month)]]) }));
  const by = ["group", "practice", "chair"] as const;
  const patients = behindOf(asUnits, { measure: visits, periods, by });
  return {
    patients: patients.map(({ about, period, people }) => ({ about, period, people })),
    clinicians: periods.flatMap((period) => cliniciansOf(months, period)),
  };
}

const visits = "visits";

/** The visits of a month as units that are alike where the same clinician has them on the same chair. */
function unitsOf({ visits }: MonthUnits): Alike[] {
  const places = (visits?.whose ?? []).map((): number[] => []);
  visits?.by.forEach((whose, visit) => {
    places[whose]?.push(visit);
  });
  return (visits?.whose ?? []).map(([chair, clinician, worker], place) => ({
    ...{ chair, clinician, worker, visits: places[place] ?? [] },
    ...{ shared: false, excluded: null, excepted: null, values: null },
    ...{ units: 1, numerator: null, denominator: null, missing: 0 },
  }));
}

function cliniciansOf(months: readonly MonthUnits[], { name, from, until }: Period): Behind[] {
  const workers = new Map<string, Set<string>>();
  for (const { practice, month, visits, units } of months) {
    if (month < from || month >= until) continue;
    const its = workers.get(practice) ?? new Set();
    workers.set(practice, its);
    for (const [, , worker] of visits?.whose ?? []) its.add(worker);
    for (const { worker } of units.get(ofEveryCanal) ?? []) if (worker !== null) its.add(worker);
  }
  return [...workers].map(([code, its]) => ({
    about: { kind: "practice", code },
    period: name,
    people: its.size,
  }));
}
