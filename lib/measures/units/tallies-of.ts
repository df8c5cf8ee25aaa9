import type { Period } from "@/lib/records/period";
import type { MedianEnds, SubjectKind, Tally } from "../tally";
import type { MonthUnits } from "./alike";
import { instrumentsOf } from "./instruments-of";
import { PatientSums, Patients } from "./patients";
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
  const by = new Set(asked.by);
  // A patient is one within a period; numbers of their own for each keep the lists short.
  const within = asked.periods.map((period) => {
    const patients = new Patients();
    const its = months.filter(({ month }) => month >= period.from && month < period.until);
    return { its, patients, sums: new PatientSums(patients) };
  });
  return asked.measures.flatMap((measure) =>
    within.flatMap(({ its, patients, sums }, place) =>
      bucketsOf(measure, its, by).map((bucket) => {
        const period = asked.periods[place] as Period;
        const whose = { measure, subject: subjectOf(bucket), period };
        return { bucket, tally: tallyOf(bucket, whose, asked, patients, sums) };
      }),
    ),
  );
}

type Whose = Pick<Tally, "measure" | "subject" | "period">;

function tallyOf(
  { parts }: Bucket,
  whose: Whose,
  asked: TalliesAsked,
  patients: Patients,
  sums: PatientSums,
): Tally {
  if (whose.measure === "separation-per-instrument") return instrumentTally(parts, whose);
  const counted = { ...whose, ...countedOf(parts) };
  if (asked.isContinuous(whose.measure)) {
    const { n, ...order } = orderOf(valuesOf(parts, patients), asked.ends, sums, asked.countsAlone);
    return { ...counted, kind: "median", n, ...order };
  }
  let numerator = 0;
  let denominator = 0;
  for (const [, alike] of parts) {
    numerator += (alike.numerator ?? 0) * alike.visits.length;
    denominator += (alike.denominator ?? 0) * alike.visits.length;
  }
  const missingWithin = whose.measure.startsWith("criterion/") ? counted.notRecorded : 0;
  const notMet = denominator - numerator - missingWithin;
  const clusters = asked.countsAlone ? null : clustersOf(parts, patients, sums);
  return { ...counted, kind: "rate", numerator, denominator, notMet, clusters };
}

function countedOf(parts: readonly Part[]) {
  const excluded: Record<string, number> = {};
  const excepted: Record<string, number> = {};
  let population = 0;
  let notRecorded = 0;
  for (const [, alike] of parts) {
    const units = alike.units * alike.visits.length;
    population += units;
    notRecorded += alike.missing * alike.visits.length;
    if (alike.excluded !== null) excluded[alike.excluded] = (excluded[alike.excluded] ?? 0) + units;
    if (alike.excepted !== null) excepted[alike.excepted] = (excepted[alike.excepted] ?? 0) + units;
  }
  return { population, excluded, excepted, notRecorded };
}

function instrumentTally(parts: readonly Part[], whose: Whose): Tally {
  const { units, events, known, missing } = instrumentsOf(parts);
  const counts = { population: units, excluded: {}, excepted: {}, notRecorded: missing };
  const rate = { numerator: events, denominator: known, notMet: known - events, clusters: null };
  return { ...whose, ...counts, kind: "rate", ...rate };
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
