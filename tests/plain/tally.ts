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
import { isolation, lengthRecorded, timerReset } from "./criteria";
import { grouped } from "./grouped";
import { instrumentsAmong, instrumentUses } from "./instruments";
import { lineRinse } from "./line-rinse";
import { order } from "./order";
import type { Records } from "./records";
import { canalUseUnits, useUnits, visitUseUnits } from "./separation";
import { bySubject } from "./subjects";
import type { Unit } from "./unit";

export type Asked = {
  /** Ids of measures, or criterion/<id>. */
  readonly measures: readonly string[];
  readonly period: Period;
  readonly by: readonly SubjectKind[];
  readonly ends: MedianEnds;
  /** The level of the ends; 0.95 where absent. */
  readonly level?: number;
};

/**
 * Every measure counted in the plain, slow, obvious way, for each subject that has a unit in the
 * period. Held equal to the counts of the store on random records.
 * @throws RangeError for a measure that is not known
 */
export function plainTallies(records: Records, asked: Asked): Tally[] {
  return asked.measures.flatMap((measure) =>
    asked.by.flatMap((kind) =>
      unitsBySubject(records, measure, kind, asked.period).map(({ subject, units }) =>
        tallyOf(measure, subject, units, asked),
      ),
    ),
  );
}

function unitsBySubject(
  records: Records,
  measure: string,
  kind: SubjectKind,
  period: Period,
): { subject: Subject; units: Unit[] }[] {
  const within = (unit: Unit) => period.from <= unit.day && unit.day < period.until;
  if (measure !== "separation-per-instrument") {
    return bySubject(unitsOf(records, measure).filter(within), kind);
  }
  // An instrument that several used is counted once for each of them, so subjects are told apart first.
  return bySubject(instrumentUses(records).filter(within), kind).map(({ subject, units }) => ({
    subject,
    units: instrumentsAmong(units),
  }));
}

const rates: Record<string, (records: Records) => Unit[]> = {
  "separation-per-use": useUnits,
  "separation-per-canal": canalUseUnits,
  "separation-per-visit": visitUseUnits,
  "criterion/timer-reset": timerReset,
  "criterion/length-recorded": lengthRecorded,
  "criterion/isolation": isolation,
  "criterion/line-rinse": lineRinse,
};

function unitsOf(records: Records, measure: string): Unit[] {
  if (measure === "volume-per-visit") return visitVolumeUnits(records);
  const units = rates[measure]?.(records) ?? canalUnits(records, measure);
  if (!units) throw new RangeError(`no such measure: ${measure}`);
  return units;
}

function tallyOf(
  measure: string,
  subject: Subject,
  units: readonly Unit[],
  { period, ends, level = 0.95 }: Asked,
): Tally {
  const states = units.map((unit) => unit.state);
  const notRecorded = states.filter((state) => "notRecorded" in state).length;
  const counted = {
    measure,
    subject,
    period,
    population: units.length,
    excluded: byReason(states.flatMap((state) => ("excluded" in state ? [state.excluded] : []))),
    excepted: byReason(states.flatMap((state) => ("excepted" in state ? [state.excepted] : []))),
    notRecorded,
  };
  const isRate = measure in rates || measure === "separation-per-instrument";
  if (!isRate) {
    const values = units.flatMap(({ state, patient }) =>
      "value" in state ? [{ value: state.value, patient }] : [],
    );
    return { ...counted, kind: "median", ...order(values, ends, level) };
  }
  const numerator = states.filter((state) => "yes" in state && state.yes).length;
  const notMet = states.filter((state) => "yes" in state && !state.yes).length;
  // Not recorded counts as not met in a criterion's rate; a separation's is of what is known.
  const unmet = measure.startsWith("criterion/") ? notMet + notRecorded : notMet;
  const clusters = clustersOf(units, measure.startsWith("criterion/"));
  return { ...counted, kind: "rate", numerator, denominator: numerator + unmet, notMet, clusters };
}

/** Patient by patient: events, units, and the sums over patients that the variance between them needs. */
function clustersOf(units: readonly Unit[], countsMissing: boolean): ClusterCounts | null {
  const counted = units.filter(
    ({ patient, state }) =>
      patient !== undefined && ("yes" in state || (countsMissing && "notRecorded" in state)),
  );
  const patients = [...grouped(counted, ({ patient }) => patient).values()].map((some) => ({
    e: some.filter(({ state }) => "yes" in state && state.yes).length,
    n: some.length,
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

function byReason(reasons: readonly string[]): ByReason {
  const groups = grouped(reasons, (reason) => reason);
  return Object.fromEntries([...groups].map(([reason, some]) => [reason, some.length]));
}
