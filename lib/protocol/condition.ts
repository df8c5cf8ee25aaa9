import type { Values } from "@/lib/records/column";

/** What a criterion demands of a unit's fields: a small tree of data, shown as a sentence, never typed or evaluated as text. */
export type Condition =
  | { readonly field: string; readonly is: string | number | boolean }
  | { readonly field: string; readonly atLeast: number }
  | { readonly recorded: string }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

/** Does the condition hold for these fields. A comparison with a field that is not recorded does not hold. */
export function holds(condition: Condition, fields: Values): boolean {
  if ("is" in condition) return fields[condition.field] === condition.is;
  if ("atLeast" in condition) {
    const value = fields[condition.field];
    return typeof value === "number" && value >= condition.atLeast;
  }
  if ("recorded" in condition) return fields[condition.recorded] !== undefined;
  if ("all" in condition) return condition.all.every((part) => holds(part, fields));
  if ("any" in condition) return condition.any.some((part) => holds(part, fields));
  return !holds(condition.not, fields);
}
