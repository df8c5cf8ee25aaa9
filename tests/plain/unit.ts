import type { Values } from "@/lib/records/column";
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

/** A clinician's code at the practice, and the key of whoever the code is on that day. */
export type Clinician = { readonly code: string; readonly key: string };

/** One unit of a measure: whose it is, when, and what became of it. */
export type Unit = {
  /** The visit, or visit/canal, visit/canal/seq, or practice/chair/day. */
  readonly id: string;
  readonly practice: string;
  /** The number of its visit; absent for a chair's day. */
  readonly session?: string;
  readonly chair: string;
  readonly day: string;
  /** Whose tooth it was; absent for what sits in no patient. */
  readonly patient?: string;
  /** The clinician whose work it is; absent for what staff and equipment do together. */
  readonly clinician?: Clinician;
  /** Others whose work it is as well: for each of them it counts once, as for the clinician. */
  readonly also?: readonly Clinician[];
  /** How many units it stands for; 1 where absent. */
  readonly weight?: number;
  readonly state: State;
};

export const notRecorded: State = { notRecorded: true };

/** A unit of a visit, of one of its canals, or of a row with a seq: the work is the canal's clinician's, else the visit's. */
export function unitOf(
  records: Records,
  visit: Visit,
  canal: Canal | undefined,
  state: State,
  row?: Values,
): Unit {
  const session = String(visit.session.session_id);
  const name = String(canal?.row.canal ?? "");
  return {
    id: row ? `${session}/${name}/${row.seq}` : canal ? `${session}/${name}` : session,
    practice: visit.practice,
    session,
    chair: String(visit.session.chair),
    day: visit.day,
    // The hash is over practice and reference, so that it tells patients apart by itself.
    patient: String(visit.session.patient),
    clinician: clinicianOf(records, visit, canal),
    state,
  };
}

/** Who worked on the canal, else on the visit. */
export function clinicianOf(records: Records, visit: Visit, canal: Canal | undefined): Clinician {
  const code = String(canal?.row.clinician ?? visit.session.clinician);
  return { code, key: worker(records, visit.practice, code, visit.day) };
}
