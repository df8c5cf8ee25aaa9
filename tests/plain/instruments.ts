import { grouped } from "./grouped";
import type { Records } from "./records";
import { notRecorded, type State, type Unit, unitOf } from "./unit";
import { visitsOf } from "./visit";

/** A use of an instrument that carries an id. */
export type InstrumentUse = Unit & { readonly instrument: string };

/** The uses that `separation-per-instrument` is counted from; an id is one instrument in its practice. */
export function instrumentUses(records: Records): InstrumentUse[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.flatMap((canal) =>
      canal.uses
        .filter((use) => use.instrument_id !== undefined)
        .map((use) => ({
          ...unitOf(records, visit, canal, stateOf(use.separated)),
          instrument: JSON.stringify([visit.practice, use.instrument_id]),
        })),
    ),
  );
}

/**
 * The instruments among some uses, of one subject in one period: an instrument belongs to everyone
 * who used it, and its separation to the one in whose use it happened. Not recorded where any of
 * these uses is unknown and none is an event. Held rows do not tell which instrument they were of.
 */
export function instrumentsAmong(uses: readonly InstrumentUse[]): Unit[] {
  return [...grouped(uses, (use) => use.instrument).values()].flatMap((some) => {
    const states = some.map((use) => use.state);
    const event = states.some((state) => "yes" in state && state.yes);
    const unknown = states.some((state) => "notRecorded" in state);
    const state = event ? { yes: true } : unknown ? notRecorded : { yes: false };
    // It passes from patient to patient, so it sits in none.
    return some.slice(0, 1).map(({ patient: _, ...use }) => ({ ...use, state }));
  });
}

function stateOf(separated: unknown): State {
  return separated === undefined ? notRecorded : { yes: Number(separated) > 0 };
}
