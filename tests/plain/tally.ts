import type { ByReason, MedianRanks, Subject, SubjectKind, Tally } from "@/lib/measures/tally";
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
  readonly ranks: MedianRanks;
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
  { period, ranks }: Asked,
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
    const values = states.flatMap((state) => ("value" in state ? [state.value] : []));
    return { ...counted, kind: "median", ...order(values, ranks) };
  }
  const numerator = states.filter((state) => "yes" in state && state.yes).length;
  const notMet = states.filter((state) => "yes" in state && !state.yes).length;
  // Not recorded counts as not met in a criterion's rate; a separation's is of what is known.
  const unmet = measure.startsWith("criterion/") ? notMet + notRecorded : notMet;
  return { ...counted, kind: "rate", numerator, denominator: numerator + unmet, notMet };
}

function byReason(reasons: readonly string[]): ByReason {
  const groups = grouped(reasons, (reason) => reason);
  return Object.fromEntries([...groups].map(([reason, some]) => [reason, some.length]));
}
