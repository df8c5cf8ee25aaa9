import type { MedianTally, RateTally, SubjectKind, Tally } from "@/lib/measures/tally";
import type { Values } from "@/lib/records/column";
import { period } from "@/lib/records/period";
import { noRecords, type Records } from "./records";
import { plainTallies } from "./tally";

/** A visit of a hand-made table: first treatment of a molar at chair 1 by clinician A, completed, unless it says otherwise. */
export function visit(session_id: string, others: Values = {}): Values {
  return {
    session_id,
    practice: "NORTH",
    chair: "1",
    clinician: "A",
    patient: "hash",
    started_at: "2024-08-14T09:00:00.000Z",
    tooth: "36",
    tooth_notation: "fdi",
    treatment: "primary",
    outcome: "completed",
    ...others,
  };
}

/** Hand-made records of one practice in London. */
export function records(tables: Partial<Records>): Records {
  return { ...noRecords({ NORTH: "Europe/London", SOUTH: "Pacific/Auckland" }), ...tables };
}

/** The one tally of a measure for the group in the third quarter of 2024. */
export function ofGroup(of: Records, measure: string): Tally {
  const [tally] = tallies(of, measure, "group");
  if (!tally) throw new Error(`nothing was counted for ${measure}`);
  return tally;
}

/** The tallies of a measure by one kind of subject. */
export function tallies(of: Records, measure: string, by: SubjectKind, span = "2024-Q3"): Tally[] {
  const asked = period(span);
  if (!asked) throw new Error(`no period: ${span}`);
  // Ranks that are easy to follow: the lowest and the highest value.
  return plainTallies(of, {
    measures: [measure],
    period: asked,
    by: [by],
    ends: { ranks: (n) => ({ lower: 1, upper: n }), reach: () => undefined },
  });
}

/** What is read off a tally of a continuous measure. */
export function values(tally: Tally): Partial<MedianTally> {
  if (tally.kind !== "median") throw new Error(`${tally.measure} is a rate`);
  const { population, excluded, notRecorded, n, median } = tally;
  return { population, excluded, notRecorded, n, median };
}

/** What is read off a rate. */
export function counts(tally: Tally): Partial<RateTally> {
  if (tally.kind !== "rate") throw new Error(`${tally.measure} is no rate`);
  const { population, excluded, excepted, notRecorded, numerator, denominator, notMet } = tally;
  return { population, excluded, excepted, notRecorded, numerator, denominator, notMet };
}
