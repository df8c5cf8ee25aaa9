import type { Values } from "@/lib/records/column";
import type { HeldRow, Records } from "../../plain/records";

/**
 * A small table, and what a criterion makes of its units. The outcomes are worked by hand from the definitions of
 * the default criteria and the rows, never from a program.
 */
export type HandMadeCase = {
  /** What the case shows. */
  readonly says: string;
  /** Id of the criterion. */
  readonly criterion: string;
  /** Rows with the fields that matter; a visit has those of `visit` beside its own. */
  readonly records: Partial<Records>;
  /**
   * By unit, as V-1 (visit), V-1/MB1 (canal), V-1/MB1/3 (row with seq 3; V-1//3 of the whole tooth) or
   * NORTH/1/2024-08-14 (chair and day): met, not met, not recorded, not counted, "excepted: reason" or
   * "excluded: reason". Every unit that is counted is listed.
   */
  readonly outcomes: Readonly<Record<string, string>>;
  /** Codes of those for whom the unit counts, where that is the point. */
  readonly clinicians?: Readonly<Record<string, readonly string[]>>;
  /** How many units it stands for, where that is the point. */
  readonly weights?: Readonly<Record<string, number>>;
};

/** A canal of V-1, prepared with a rotary file, unless it says otherwise. */
export function canal(name: string, others: Values = {}): Values {
  return { session_id: "V-1", canal: name, preparation: "rotary", ...others };
}

/** A delivery by syringe into a canal of V-1, unless it says otherwise. */
export function delivery(
  canal: string,
  seq: number,
  irrigant: string,
  others: Values = {},
): Values {
  return { ...wholeTooth(seq, irrigant), canal, ...others };
}

/** A delivery written down for the whole tooth. */
export function wholeTooth(seq: number, irrigant: string, others: Values = {}): Values {
  return { session_id: "V-1", seq, irrigant, delivery: "syringe", ...others };
}

/** A step of V-1, or of the canal it names. */
export function step(name: string, status: string, others: Values = {}): Values {
  return { session_id: "V-1", step: name, status, ...others };
}

/** An exception of V-1, or of the canal it names. */
export function exception(criterion: string, reason: string, others: Values = {}): Values {
  return { session_id: "V-1", criterion, reason, ...others };
}

/** A held row that names V-1, and a canal where it does. */
export function held(table: HeldRow["table"], others: Partial<HeldRow> = {}): HeldRow {
  return { table, session_id: "V-1", ...others };
}
