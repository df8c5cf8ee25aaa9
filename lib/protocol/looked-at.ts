import type { Condition } from "./condition";
import { listIn } from "./truth";

/** What a condition looks at: a field of the unit, or of the items of a list. */
export type LookedAt = { readonly list: string | null; readonly field: string };

/** Every field that a condition looks at, in its order and each once. A list without a field asks only whether there is an item. */
export function lookedAt(condition: Condition): LookedAt[] {
  const all = collected(condition, null);
  return [...new Map(all.map((one) => [`${one.list}\n${one.field}`, one])).values()];
}

/** Every list that a condition looks through, each once. */
export function listsIn(condition: Condition): string[] {
  if ("known" in condition) return listsIn(condition.known);
  if ("not" in condition) return listsIn(condition.not);
  if ("all" in condition) return [...new Set(condition.all.flatMap(listsIn))];
  if ("any" in condition) return [...new Set(condition.any.flatMap(listsIn))];
  return "field" in condition || "recorded" in condition ? [] : [listIn(condition)];
}

function collected(condition: Condition, list: string | null): LookedAt[] {
  if ("field" in condition) return [{ list, field: condition.field }];
  if ("recorded" in condition) return [{ list, field: condition.recorded }];
  if ("known" in condition) return collected(condition.known, list);
  if ("not" in condition) return collected(condition.not, list);
  if ("all" in condition) return condition.all.flatMap((part) => collected(part, list));
  if ("any" in condition) return condition.any.flatMap((part) => collected(part, list));
  const within = listIn(condition);
  const of = (...parts: readonly Condition[]) => parts.flatMap((part) => collected(part, within));
  if ("some" in condition) return of(condition.that);
  if ("every" in condition) return of(condition.that, condition.are);
  if ("total" in condition)
    return [...of(condition.that), ...condition.total.map((field) => ({ list: within, field }))];
  if ("nextTo" in condition) return of(condition.one, condition.other);
  if ("between" in condition) return of(condition.one, condition.other, condition.lies);
  return of(condition.each, condition.comes);
}

/** Every field of the unit itself that a condition looks at, each once. */
export function fieldsIn(condition: Condition): string[] {
  return lookedAt(condition).flatMap(({ list, field }) => (list === null ? [field] : []));
}
