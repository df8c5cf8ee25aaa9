import type { Records } from "../records";
import { notRecorded, type State, type Unit, unitOf } from "../unit";
import { type Canal, type Visit, visitsOf } from "../visit";
import type { Truth } from "./kleene";

/** What is known of a unit in the light of one criterion. */
export type Known = {
  /** It is of the population. */
  readonly member: Truth;
  /** Why its canal is outside the treatment population. */
  readonly outside?: string | undefined;
  /** Reasons to leave it out, the first that holds first. */
  readonly left?: readonly (readonly [reason: string, holds: Truth])[];
  readonly met: Truth;
  /** The coded reason for which it may go unmet. */
  readonly excepted?: string | undefined;
};

/** What becomes of the unit; undefined where it is not counted. */
export function judged({ member, outside, left = [], met, excepted }: Known): State | undefined {
  if (member === false) return undefined;
  if (outside !== undefined) return { excluded: outside };
  for (const [reason, holds] of left) if (holds === true) return { excluded: reason };
  const eligible = member === true && left.every(([, holds]) => holds === false);
  if (eligible && met === true) return { yes: true };
  // A coded reason is evidence by itself, so it goes before "not recorded".
  if (excepted !== undefined) return { excepted };
  return eligible && met === false ? { yes: false } : notRecorded;
}

/** The canals of all visits that are counted. */
export function canalUnits(
  records: Records,
  stateOf: (visit: Visit, canal: Canal) => State | undefined,
): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.flatMap((canal) => {
      const state = stateOf(visit, canal);
      return state ? [unitOf(records, visit, canal, state)] : [];
    }),
  );
}

/** The visits that are counted. */
export function visitUnits(records: Records, stateOf: (visit: Visit) => State | undefined): Unit[] {
  return visitsOf(records).flatMap((visit) => {
    const state = stateOf(visit);
    return state ? [unitOf(records, visit, undefined, state)] : [];
  });
}
