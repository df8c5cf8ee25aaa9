import type { Condition, OverList } from "./condition";
import type { ListItem } from "./judged-unit";
import { every, not, some, type Truth } from "./kleene";

type Ordered = Extract<OverList, { nextTo: string } | { between: string } | { after: string }>;

/** What follows what. An item that may matter and whose place is not known leaves the answer unknown. */
export function inOrder(
  condition: Ordered,
  items: readonly ListItem[],
  of: (part: Condition) => Truth[],
): Truth {
  if ("after" in condition) {
    const each = of(condition.each);
    const comes = of(condition.comes);
    if (noneCan(each)) return true;
    if (looseMatters(items, [each, comes])) return undefined;
    return every(
      items.map((one, i) =>
        some([not(each[i]), some(items.map((next, j) => follows(one, next) && comes[j]))]),
      ),
    );
  }
  const one = of(condition.one);
  const other = of(condition.other);
  const lies = "between" in condition ? of(condition.lies) : [];
  const never = noneCan(one) || noneCan(other);
  if (never) return "between" in condition;
  if ("nextTo" in condition) {
    // Whatever it is, it may stand between two that seem to be neighbours.
    if (items.some((item) => item.loose)) return undefined;
    return some(changes(items, one, other).map(([i, j, change]) => isNext(items, i, j) && change));
  }
  if (looseMatters(items, [one, other, lies])) return undefined;
  return every(
    changes(items, one, other).map(([i, j, change]) =>
      some([not(change), some(between(items, i, j).map((k) => lies[k]))]),
    ),
  );
}

/** Every pair of items that follow each other, and whether the one and the other are such as are asked for. */
function changes(
  items: readonly ListItem[],
  one: readonly Truth[],
  other: readonly Truth[],
): [number, number, Truth][] {
  return items.flatMap((first, i) =>
    items.flatMap((second, j): [number, number, Truth][] =>
      follows(first, second)
        ? [[i, j, some([every([one[i], other[j]]), every([other[i], one[j]])])]]
        : [],
    ),
  );
}

function between(items: readonly ListItem[], i: number, j: number): number[] {
  const [first, last] = [items[i], items[j]];
  return items.flatMap((item, k) =>
    first && last && follows(first, item) && follows(item, last) ? [k] : [],
  );
}

function isNext(items: readonly ListItem[], i: number, j: number): boolean {
  return between(items, i, j).length === 0;
}

function follows(one: ListItem, next: ListItem): boolean {
  return (
    one.place !== null &&
    one.place === next.place &&
    one.rank !== null &&
    next.rank !== null &&
    one.rank < next.rank
  );
}

function noneCan(truths: readonly Truth[]): boolean {
  return truths.every((truth) => truth === false);
}

function looseMatters(items: readonly ListItem[], asked: readonly (readonly Truth[])[]): boolean {
  return items.some((item, i) => item.loose && asked.some((truths) => truths[i] !== false));
}
