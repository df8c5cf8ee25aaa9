import type {
  ByReason,
  ClusterCounts,
  MedianEnds,
  Subject,
  SubjectKind,
  Tally,
} from "@/lib/measures/tally";
import type { Period } from "@/lib/records/period";
import { canalUnits, visitVolumeUnits } from "./continuous";
import { criterionUnits, type Limits } from "./criteria/criteria";
import { grouped } from "./grouped";
import { instrumentsAmong, instrumentUses } from "./instruments";
import { order } from "./order";
import type { Records } from "./records";
import { canalUseUnits, useUnits, visitUseUnits } from "./separation";
import { bySubject } from "./subjects";
import type { State, Unit } from "./unit";

export type Asked = {
  /** Ids of measures, or criterion/<id>. */
  readonly measures: readonly string[];
  readonly period: Period;
  readonly by: readonly SubjectKind[];
  readonly ends: MedianEnds;
  /** The level of the ends; 0.95 where absent. */
  readonly level?: number;
  /** What the practice has set; the tests' limits where absent. */
  readonly limits?: Limits;
  /** Ids of the criteria that a complete record needs evidence for; those in force at first where absent. */
  readonly inForce?: readonly string[];
};

/**
 * Every measure counted in the plain, slow, obvious way, for each subject that has a unit in the
 * period. Held equal to the counts of the store on random records.
 * @throws RangeError for a measure that is not known
 */
export function plainTallies(records: Records, asked: Asked): Tally[] {
  return asked.measures.flatMap((measure) => {
    const subjects = subjectsIn(records, measure, asked);
    return asked.by.flatMap((kind) =>
      subjects(kind).map(({ subject, units }) => tallyOf(measure, subject, units, asked)),
    );
  });
}

/** The units of the period, by the subjects of a kind. */
function subjectsIn(
  records: Records,
  measure: string,
  asked: Asked,
): (kind: SubjectKind) => { subject: Subject; units: Unit[] }[] {
  const { from, until } = asked.period;
  const within = (unit: Unit) => from <= unit.day && unit.day < until;
  if (measure !== "separation-per-instrument") {
    const units = unitsOf(records, measure, asked).filter(within);
    return (kind) => bySubject(units, kind);
  }
  // An instrument that several used is counted once for each of them, so subjects are told apart first.
  const uses = instrumentUses(records).filter(within);
  return (kind) =>
    bySubject(uses, kind).map(({ subject, units }) => ({
      subject,
      units: instrumentsAmong(units),
    }));
}

const ofCriterion = "criterion/";

const rates: Record<string, (records: Records) => Unit[]> = {
  "separation-per-use": useUnits,
  "separation-per-canal": canalUseUnits,
  "separation-per-visit": visitUseUnits,
};

function unitsOf(
  records: Records,
  measure: string,
  { limits, inForce }: Pick<Asked, "limits" | "inForce">,
): Unit[] {
  if (measure === "volume-per-visit") return visitVolumeUnits(records);
  const units = measure.startsWith(ofCriterion)
    ? criterionUnits(records, measure.slice(ofCriterion.length), limits, inForce)
    : (rates[measure]?.(records) ?? canalUnits(records, measure));
  if (!units) throw new RangeError(`no such measure: ${measure}`);
  return units;
}

function tallyOf(
  measure: string,
  subject: Subject,
  units: readonly Unit[],
  { period, ends, level = 0.95 }: Asked,
): Tally {
  const isCriterion = measure.startsWith(ofCriterion);
  const notRecorded = weighed(units, (state) => "notRecorded" in state);
  const counted = {
    measure,
    subject,
    period,
    population: weighed(units, () => true),
    excluded: byReason(units, (state) => ("excluded" in state ? state.excluded : undefined)),
    excepted: byReason(units, (state) => ("excepted" in state ? state.excepted : undefined)),
    notRecorded,
  };
  const isRate = isCriterion || measure in rates || measure === "separation-per-instrument";
  if (!isRate) {
    const values = units.flatMap(({ state, patient }) =>
      "value" in state ? [{ value: state.value, patient }] : [],
    );
    return { ...counted, kind: "median", ...order(values, ends, level) };
  }
  const numerator = weighed(units, (state) => "yes" in state && state.yes);
  const notMet = weighed(units, (state) => "yes" in state && !state.yes);
  // Not recorded counts as not met in a criterion's rate; a separation's is of what is known.
  const unmet = isCriterion ? notMet + notRecorded : notMet;
  const clusters = clustersOf(units, isCriterion);
  return { ...counted, kind: "rate", numerator, denominator: numerator + unmet, notMet, clusters };
}

/** Patient by patient: events, units, and the sums over patients that the variance between them needs. */
function clustersOf(units: readonly Unit[], countsMissing: boolean): ClusterCounts | null {
  const counted = units.filter(
    ({ patient, state }) =>
      patient !== undefined && ("yes" in state || (countsMissing && "notRecorded" in state)),
  );
  const patients = [...grouped(counted, ({ patient }) => patient).values()].map((some) => ({
    e: weighed(some, (state) => "yes" in state && state.yes),
    n: weighed(some, () => true),
  }));
  if (patients.length === 0) return null;
  const sum = (of: (one: { e: number; n: number }) => number) =>
    patients.reduce((total, one) => total + of(one), 0);
  return {
    clusters: patients.length,
    events: sum(({ e }) => e),
    units: sum(({ n }) => n),
    eventsSquared: sum(({ e }) => e * e),
    eventsByUnits: sum(({ e, n }) => e * n),
    unitsSquared: sum(({ n }) => n * n),
  };
}

function byReason(
  units: readonly Unit[],
  reasonOf: (state: State) => string | undefined,
): ByReason {
  const groups = grouped(units, ({ state }) => reasonOf(state));
  return Object.fromEntries(
    [...groups].flatMap(([reason, some]) =>
      reason === undefined ? [] : [[reason, weighed(some, () => true)]],
    ),
  );
}

/** How many units the ones that are such stand for. */
function weighed(units: readonly Unit[], such: (state: State) => boolean): number {
  return units
    .filter(({ state }) => such(state))
    .reduce((total, { weight = 1 }) => total + weight, 0);
}
