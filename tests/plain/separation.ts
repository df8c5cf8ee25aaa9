import type { Values } from "@/lib/records/column";
import type { Records } from "./records";
import { notRecorded, type State, type Unit, unitOf } from "./unit";
import { anyHeld, visitsOf } from "./visit";

/** The units of `separation-per-use`: every use of every accepted row, whatever treatment or outcome. Held rows add none. */
export function useUnits(records: Records): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.flatMap((canal) =>
      canal.uses.flatMap(statesOfRow).map((state) => unitOf(records, visit, canal, state)),
    ),
  );
}

/** The units of `separation-per-canal`: canals with an instrument row, accepted or held. */
export function canalUseUnits(records: Records): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.flatMap((canal) => {
      const state = together(canal.uses, anyHeld(canal.held, "instruments"));
      return state ? [unitOf(records, visit, canal, state)] : [];
    }),
  );
}

/** The units of `separation-per-visit`: the same of visits; the work is the visit's clinician's. */
export function visitUseUnits(records: Records): Unit[] {
  return visitsOf(records).flatMap((visit) => {
    // A held use that names a canal the visit does not have is nobody's.
    const held = visit.canals.some((canal) => anyHeld(canal.held, "instruments"));
    const state = together(visit.uses, held);
    return state ? [unitOf(records, visit, undefined, state)] : [];
  });
}

/** The state of every use that a row stands for: as many with a separation as it says, the others without. */
function statesOfRow({ uses, separated }: Values): State[] {
  const stands = Number(uses ?? 1);
  return Array.from({ length: stands }, (_, place) =>
    separated === undefined ? notRecorded : { yes: place < Number(separated) },
  );
}

/** An event is one even beside unknown or held uses; being free of one takes that all are known and none held. */
function together(uses: readonly Values[], held: boolean): State | undefined {
  if (uses.length === 0 && !held) return undefined;
  if (uses.some((use) => Number(use.separated ?? 0) > 0)) return { yes: true };
  const known = !held && uses.every((use) => use.separated !== undefined);
  return known ? { yes: false } : notRecorded;
}
