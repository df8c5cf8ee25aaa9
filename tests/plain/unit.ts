import type { Records } from "./records";
import type { Canal, Visit } from "./visit";
import { worker } from "./worker";

/** What became of a unit: left out, excepted, without evidence, a value, or yes or no. */
export type State =
  | { readonly excluded: string }
  | { readonly excepted: string }
  | { readonly notRecorded: true }
  | { readonly value: number }
  | { readonly yes: boolean };

/** One unit of a measure: whose it is, when, and what became of it. */
export type Unit = {
  readonly practice: string;
  readonly chair: string;
  readonly day: string;
  /** Whose tooth it was; absent for what sits in no patient. */
  readonly patient?: string;
  /** The clinician whose work it is; absent for what staff and equipment do together. */
  readonly clinician?: { readonly code: string; readonly key: string };
  readonly state: State;
};

export const notRecorded: State = { notRecorded: true };

/** A unit of a visit, or of one of its canals: the work is the canal's clinician's, else the visit's. */
export function unitOf(
  records: Records,
  visit: Visit,
  canal: Canal | undefined,
  state: State,
): Unit {
  const code = String(canal?.row.clinician ?? visit.session.clinician);
  return {
    practice: visit.practice,
    chair: String(visit.session.chair),
    day: visit.day,
    // The hash is over practice and reference, so that it tells patients apart by itself.
    patient: String(visit.session.patient),
    clinician: { code, key: worker(records, visit.practice, code, visit.day) },
    state,
  };
}
