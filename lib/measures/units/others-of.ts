import type { Period } from "@/lib/records/period";
import type { ClusterCounts, MedianEnds, MedianTally } from "../tally";
import type { Alike, MonthUnits } from "./alike";
import { PatientSums, Patients } from "./patients";
import { orderOf, type Part, valuesOf } from "./values";

/** The work of `other` at `practice` in the period of that place stands beside that of `worker`. */
export type Beside = {
  readonly worker: string;
  readonly period: number;
  readonly practice: string;
  readonly other: string;
};

export type OthersAsked = {
  readonly measures: readonly string[];
  readonly periods: readonly Period[];
  readonly pairs: readonly Beside[];
  readonly ends: MedianEnds;
  readonly isContinuous: (measure: string) => boolean;
  /** Stands a comparison with others of so many units each. */
  readonly stands: (units: readonly number[]) => boolean;
};

export type OthersOf = Pick<Beside, "worker" | "period"> &
  Pick<MedianTally, "median" | "quartiles" | "bounds" | "clustered"> & {
    readonly measure: string;
    readonly n: number;
    readonly numerator: number | null;
    readonly clusters: ClusterCounts | null;
  };

/** What each clinician's others come to by the units of months, where the comparison stands. */
export function othersOf(months: readonly MonthUnits[], asked: OthersAsked): OthersOf[] {
  const patients = new Patients();
  const sums = new PatientSums(patients);
  const targets = grouped(asked.pairs, ({ worker, period }) => `${period}\n${worker}`);
  return asked.measures.flatMap((measure) => {
    const work = asked.periods.map((period) => workOf(measure, months, period));
    return [...targets.values()].flatMap((pairs) => {
      const [first] = pairs;
      if (!first) return [];
      const parts = grouped(
        pairs.flatMap((pair) =>
          (work[pair.period]?.get(keyOf(pair.practice, pair.other)) ?? []).map((part) => ({
            pair,
            part,
          })),
        ),
        ({ pair }) => pair.other,
      );
      const each = [...parts.values()].map((some) => some.map(({ part }) => part));
      const units = each.map((some) =>
        some.reduce((total, [, alike]) => total + unitsOf(alike), 0),
      );
      if (!asked.stands(units)) return [];
      const { worker, period } = first;
      return [{ worker, period, measure, ...cameTo(measure, each.flat(), asked, patients, sums) }];
    });
  });
}

/** The units of a measure in a period that count for somebody, by practice and clinician. */
function workOf(measure: string, months: readonly MonthUnits[], { from, until }: Period) {
  const found = new Map<string, Part[]>();
  for (const one of months) {
    if (one.month < from || one.month >= until) continue;
    for (const alike of one.units.get(measure) ?? []) {
      if (alike.worker === null || alike.excluded !== null || alike.excepted !== null) continue;
      if (unitsOf(alike) === 0) continue;
      const key = keyOf(one.practice, alike.worker);
      const parts = found.get(key) ?? [];
      found.set(key, parts);
      parts.push([one, alike]);
    }
  }
  return found;
}

function keyOf(practice: string, worker: string): string {
  return `${practice}\n${worker}`;
}

/** Values that are recorded; of a rate, units with evidence. */
function unitsOf({ values, visits, denominator, missing }: Alike): number {
  if (values === null) return (denominator ?? 0) * visits.length;
  return missing > 0 ? 0 : visits.length;
}

function cameTo(
  measure: string,
  parts: readonly Part[],
  { ends, isContinuous }: OthersAsked,
  patients: Patients,
  sums: PatientSums,
) {
  if (isContinuous(measure))
    return {
      numerator: null,
      clusters: null,
      ...orderOf(valuesOf(parts, patients), ends, sums),
    };
  let n = 0;
  let numerator = 0;
  for (const [month, alike] of parts) {
    const [events, units] = [alike.numerator ?? 0, alike.denominator ?? 0];
    n += units * alike.visits.length;
    numerator += events * alike.visits.length;
    const numbers = patients.of(month);
    for (const visit of alike.visits)
      if (typeof visit === "number") sums.add(numbers[visit] ?? -1, events, units);
  }
  const nothing = { median: null, quartiles: null, bounds: null, clustered: null };
  return { n, numerator, clusters: sums.take(), ...nothing };
}

function grouped<One>(all: readonly One[], keyOfOne: (one: One) => string): Map<string, One[]> {
  const found = new Map<string, One[]>();
  for (const one of all) {
    const key = keyOfOne(one);
    const some = found.get(key);
    if (some) some.push(one);
    else found.set(key, [one]);
  }
  return found;
}
