import type { Values } from "@/lib/records/column";
import type { Comparison, Condition, OverList } from "./condition";
import { inOrder } from "./in-order";
import type { JudgedUnit } from "./judged-unit";
import { every, not, some, type Truth } from "./kleene";

/** Does the condition hold of the unit; an item of a list is a unit without lists. */
export function truthOf(condition: Condition, unit: Pick<JudgedUnit, "fields" | "lists">): Truth {
  if ("field" in condition) return compared(condition, unit.fields);
  if ("recorded" in condition) return unit.fields[condition.recorded] !== undefined;
  if ("known" in condition) return truthOf(condition.known, unit) === true;
  if ("all" in condition) return every(condition.all.map((part) => truthOf(part, unit)));
  if ("any" in condition) return some(condition.any.map((part) => truthOf(part, unit)));
  if ("not" in condition) return not(truthOf(condition.not, unit));
  return overList(condition, unit);
}

function compared(comparison: Comparison, fields: Values): Truth {
  const value = fields[comparison.field];
  // Whatever it is, it is not among none.
  if ("among" in comparison && comparison.among.length === 0) return false;
  if (value === undefined) return undefined;
  if ("is" in comparison) return value === comparison.is;
  if ("among" in comparison) return comparison.among.includes(String(value));
  const limit = "atLeast" in comparison ? comparison.atLeast : comparison.atMost;
  if (limit === null || typeof value !== "number") return undefined;
  return "atLeast" in comparison ? value >= limit : value <= limit;
}

function overList(condition: OverList, { lists }: Pick<JudgedUnit, "lists">): Truth {
  const items = lists[listIn(condition)] ?? [];
  const of = (part: Condition) => items.map(({ fields }) => truthOf(part, { fields, lists: {} }));
  if ("some" in condition) return some(of(condition.that));
  if ("every" in condition) {
    const are = of(condition.are);
    return every(of(condition.that).map((that, place) => some([not(that), are[place]])));
  }
  if ("total" in condition) {
    const counted = of(condition.that).map((that, place) => ({
      that,
      parts: condition.total.map((field) => items[place]?.fields[field]),
    }));
    return totalled(condition, counted);
  }
  return inOrder(condition, items, of);
}

function totalled(
  limits: { readonly atLeast: number | null } | { readonly atMost: number | null },
  items: readonly { readonly that: Truth; readonly parts: readonly unknown[] }[],
): Truth {
  const limit = "atLeast" in limits ? limits.atLeast : limits.atMost;
  if (limit === null) return undefined;
  const isNumber = (part: unknown) => typeof part === "number";
  const known = items.flatMap(({ that, parts }) => (that ? parts.filter(isNumber) : []));
  // To a millionth, so that the order in which floats are added makes no difference.
  const sum = Number(known.reduce((total, part) => total + part, 0).toFixed(6));
  const unknown = items.some(
    ({ that, parts }) => that === undefined || (that && !parts.every(isNumber)),
  );
  if ("atLeast" in limits) return sum >= limit ? true : unknown ? undefined : false;
  return sum > limit ? false : unknown ? undefined : true;
}

/** The list that the condition looks through. */
export function listIn(condition: OverList): string {
  if ("some" in condition) return condition.some;
  if ("every" in condition) return condition.every;
  if ("total" in condition) return condition.of;
  if ("nextTo" in condition) return condition.nextTo;
  return "between" in condition ? condition.between : condition.after;
}
