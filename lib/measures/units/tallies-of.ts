import type { Period } from "@/lib/records/period";
import type { ByReason, MedianEnds, SubjectKind, Tally } from "../tally";
import type { MonthUnits } from "./alike";
import { instrumentsOf } from "./instruments-of";
import { Patients, PatientSums } from "./patients";
import { type Bucket, bucketsOf, subjectOf } from "./subjects";
import { orderOf, type Part, valuesOf } from "./values";

/** What is asked of the months' units. */
export type TalliesAsked = {
  readonly measures: readonly string[];
  /** Made of whole months. */
  readonly periods: readonly Period[];
  readonly by: readonly SubjectKind[];
  readonly ends: MedianEnds;
  /** Counts without order statistics and patients. */
  readonly countsAlone?: boolean;
  readonly isContinuous: (measure: string) => boolean;
};

/** A tally with the bucket that it is of. */
export type TallyOf = { readonly tally: Tally; readonly bucket: Bucket };

/** Counts and order statistics of measures, for each period and subject that has units; by measure, period and subject. */
export function talliesOf(months: readonly MonthUnits[], asked: TalliesAsked): TallyOf[] {
  const patients = new Patients();
  const sums = new PatientSums(patients);
  const by = new Set(asked.by);
  const within = asked.periods.map((period) =>
    months.filter(({ month }) => month >= period.from && month < period.until),
  );
  return asked.measures.flatMap((measure) =>
    asked.periods.flatMap((period, place) =>
      bucketsOf(measure, within[place] ?? [], by).map((bucket) => {
        const counted = countedOf(bucket, measure, period);
        return { bucket, tally: tallyOf(bucket, counted, asked, patients, sums) };
      }),
    ),
  );
}

type Counted = Pick<
  Tally,
  "measure" | "subject" | "period" | "population" | "excluded" | "excepted" | "notRecorded"
>;

function countedOf(bucket: Bucket, measure: string, period: Period): Counted {
  const { parts } = bucket;
  if (measure === "separation-per-instrument") {
    const { units, missing } = instrumentsOf(parts);
    const none = { excluded: {}, excepted: {} };
    const subject = subjectOf(bucket);
    return { measure, subject, period, population: units, ...none, notRecorded: missing };
  }
  const [excluded, excepted]: Record<string, number>[] = [{}, {}];
  let population = 0;
  let notRecorded = 0;
  for (const [, alike] of parts) {
    const units = alike.units * alike.visits.length;
    population += units;
    add(excluded, alike.excluded, units);
    add(excepted, alike.excepted, units);
    notRecorded += alike.missing * alike.visits.length;
  }
  return {
    measure,
    subject: subjectOf(bucket),
    period,
    population,
    excluded: excluded as ByReason,
    excepted: excepted as ByReason,
    notRecorded,
  };
}

function add(to: Record<string, number> | undefined, reason: string | null, units: number): void {
  if (to && reason !== null) to[reason] = (to[reason] ?? 0) + units;
}

function tallyOf(
  { parts }: Bucket,
  counted: Counted,
  asked: TalliesAsked,
  patients: Patients,
  sums: PatientSums,
): Tally {
  if (asked.isContinuous(counted.measure)) {
    const n = valuesCount(parts);
    const nothing = { median: null, quartiles: null, bounds: null, clustered: null };
    if (asked.countsAlone) return { ...counted, kind: "median", n, ...nothing };
    const values = valuesOf(parts, patients);
    return { ...counted, kind: "median", n, ...orderOf(values, asked.ends, sums) };
  }
  if (counted.measure === "separation-per-instrument") {
    const { events, known } = instrumentsOf(parts);
    const rate = { numerator: events, denominator: known, notMet: known - events };
    return { ...counted, kind: "rate", ...rate, clusters: null };
  }
  let numerator = 0;
  let denominator = 0;
  for (const [, alike] of parts) {
    numerator += (alike.numerator ?? 0) * alike.visits.length;
    denominator += (alike.denominator ?? 0) * alike.visits.length;
  }
  const missingWithin = counted.measure.startsWith("criterion/") ? counted.notRecorded : 0;
  const notMet = denominator - numerator - missingWithin;
  const clusters = asked.countsAlone ? null : clustersOf(parts, patients, sums);
  return { ...counted, kind: "rate", numerator, denominator, notMet, clusters };
}

function valuesCount(parts: readonly Part[]): number {
  let n = 0;
  for (const [, alike] of parts)
    if (alike.excluded === null) for (const value of alike.values ?? []) if (value !== null) n += 1;
  return n;
}

/** Events and units of the patients; null for units that sit in no patient. */
function clustersOf(parts: readonly Part[], patients: Patients, sums: PatientSums) {
  for (const [month, alike] of parts) {
    const [events, units] = [alike.numerator ?? 0, alike.denominator ?? 0];
    if (events === 0 && units === 0) continue;
    const numbers = patients.of(month);
    for (const visit of alike.visits)
      if (typeof visit === "number") sums.add(numbers[visit] ?? -1, events, units);
  }
  return sums.take();
}
