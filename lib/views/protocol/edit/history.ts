/** What is edited, what it was, and what was undone. */
export type History<Value> = {
  readonly past: readonly Value[];
  readonly now: Value;
  readonly future: readonly Value[];
  /** What was edited last: typing on in one field is one step. */
  readonly last: string | null;
};

export type Edit<Value> = { readonly to: Value; readonly where: string | null } | "undo" | "redo";

const mostSteps = 200;

export function begun<Value>(now: Value): History<Value> {
  return { past: [], now, future: [], last: null };
}

/** The history after an edit. `where` names the field that is typed in; null is a step of its own. */
export function edited<Value>(history: History<Value>, edit: Edit<Value>): History<Value> {
  const { past, now, future } = history;
  if (edit === "undo") {
    const before = past.at(-1);
    if (before === undefined) return history;
    return { past: past.slice(0, -1), now: before, future: [now, ...future], last: null };
  }
  if (edit === "redo") {
    const [next, ...rest] = future;
    if (next === undefined) return history;
    return { past: [...past, now], now: next, future: rest, last: null };
  }
  const goesOn = edit.where !== null && edit.where === history.last;
  return {
    past: goesOn ? past : [...past, now].slice(-mostSteps),
    now: edit.to,
    future: [],
    last: edit.where,
  };
}
