import type { Condition, OverList } from "./condition";
import type { ListItem } from "./judged-unit";
import { every, not, some, type Truth } from "./kleene";

type Ordered = Extract<OverList, { nextTo: string } | { between: string } | { after: string }>;

/**
 * What follows what, by the items whose place is known. One whose place is not known leaves the answer unknown only
 * where it could change it: it can come between two others, or be one that is asked for.
 */
export function inOrder(
  condition: Ordered,
  items: readonly ListItem[],
  of: (part: Condition) => Truth[],
): Truth {
  const looseCanBe = (...asked: Truth[][]) =>
    items.some((item, i) => item.loose && asked.some((truths) => truths[i] !== false));
  if ("after" in condition) {
    const each = of(condition.each);
    const comes = of(condition.comes);
    if (noneCan(each)) return true;
    const found = every(
      items.map((one, i) =>
        some([
          one.loose ? true : not(each[i]),
          some(items.map((next, j) => follows(one, next) && comes[j])),
        ]),
      ),
    );
    return unless(found === false ? looseCanBe(comes) : looseCanBe(each), found);
  }
  const one = of(condition.one);
  const other = of(condition.other);
  if (noneCan(one) || noneCan(other)) return "between" in condition;
  const pairs = changes(items, one, other);
  if ("nextTo" in condition) {
    const found = some(pairs.map(([i, j, change]) => isNext(items, i, j) && change));
    // Whatever a loose item is, it may stand between two that seem to be neighbours.
    return unless(found === true ? looseCanBe([]) : looseCanBe(one, other), found);
  }
  const lies = of(condition.lies);
  const found = every(
    pairs.map(([i, j, change]) =>
      some([not(change), some(between(items, i, j).map((k) => lies[k]))]),
    ),
  );
  return unless(found === false ? looseCanBe(lies) : looseCanBe(one, other), found);
}

function unless(open: boolean, found: Truth): Truth {
  return open ? undefined : found;
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
    !one.loose &&
    !next.loose &&
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
