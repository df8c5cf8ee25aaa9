import { type ActionState, type AuditAction, stateOf } from "@/lib/records/audit-work";
import { day } from "../day";

/** An action as a page, a report and a reminder show it. */
export type ActionLine = {
  readonly id: number;
  readonly audit: number;
  readonly measure: string;
  readonly what: string;
  readonly why: string;
  readonly owner: string;
  readonly ownerId: string;
  readonly due: string;
  /** YYYY-MM-DD. */
  readonly dueDay: string;
  readonly know: string;
  readonly state: ActionState;
  readonly stateWords: string;
  /** Open after its day. */
  readonly late: boolean;
  readonly news: readonly string[];
};

/** @param today YYYY-MM-DD */
export function actionLine(action: AuditAction, today: string): ActionLine {
  const state = stateOf(action);
  const late = state === "open" && action.due < today;
  return {
    ...{ id: action.id, audit: action.audit, what: action.what, why: action.why },
    ...{ measure: action.measure ?? "", owner: action.owner, ownerId: action.ownerId ?? "" },
    ...{ due: day(action.due), dueDay: action.due, know: action.know, state, late },
    stateWords: late ? `open, due since ${day(action.due)}` : stateNames[state],
    news: action.news.map(
      (one) => `${day(one.at)}, ${one.by}, ${stateNames[one.state]}: ${one.text}`,
    ),
  };
}

export const stateNames: Readonly<Record<ActionState, string>> = {
  open: "open",
  done: "done",
  dropped: "dropped",
};

/** Those still open, the first due first. */
export function openActions(actions: readonly AuditAction[], today: string): ActionLine[] {
  return actions
    .filter((one) => stateOf(one) === "open")
    .sort((one, other) => (one.due < other.due ? -1 : one.due > other.due ? 1 : one.id - other.id))
    .map((one) => actionLine(one, today));
}
