import type { Records } from "../records";
import { type Unit, unitOf } from "../unit";
import { visitsOf } from "../visit";

/** The units of another criterion in force. */
export type Others = {
  readonly units: readonly Unit[];
  /** It is about recording itself: what it lacks is not met, never not recorded. */
  readonly aboutRecording: boolean;
};

/** Visits, by whether no row of them is held and no criterion in force lacks anything of them. */
export function recordComplete(records: Records, others: readonly Others[]): Unit[] {
  const gaps = new Set(
    others.flatMap(({ units, aboutRecording }) =>
      units
        .filter(
          ({ state }) => "notRecorded" in state || (aboutRecording && "yes" in state && !state.yes),
        )
        .map(({ practice, session }) => JSON.stringify([practice, session])),
    ),
  );
  return visitsOf(records).map((visit) => {
    const complete =
      visit.held.length === 0 &&
      !gaps.has(JSON.stringify([visit.practice, visit.session.session_id]));
    return unitOf(records, visit, undefined, { yes: complete });
  });
}
