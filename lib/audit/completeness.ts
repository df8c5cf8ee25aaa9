import type { Measured } from "@/lib/measures/measured";
import type { Tally } from "@/lib/measures/tally";

/** How much of what should be recorded is: `recorded` of `due` units. */
export type Completeness = Measured & {
  readonly recorded: number;
  readonly due: number;
  /** Null where nothing is due. */
  readonly share: number | null;
  /** The least share at which a criterion can be assessed; null for measures and for criteria about recording itself. */
  readonly floor: number | null;
};

/** The completeness of what is counted for a measure, what is left out or excepted apart. */
export function completenessOf(tally: Tally): Completeness {
  const { criterion } = tally;
  // Criteria count what is not recorded in the denominator; the other measures leave it out.
  const counted = tally.kind === "median" ? tally.n : tally.denominator;
  const due = criterion ? counted : counted + tally.notRecorded;
  const recorded = due - tally.notRecorded;
  return {
    measure: tally.measure,
    ...(criterion ? { criterion } : {}),
    recorded,
    due,
    share: due === 0 ? null : recorded / due,
    floor: criterion?.completenessFloor ?? null,
  };
}
