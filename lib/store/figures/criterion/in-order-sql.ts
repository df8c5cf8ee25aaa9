import type { Condition, OverList } from "@/lib/protocol/condition";
import { everyOf, someOf } from "./kleene-sql";

type Ordered = Extract<OverList, { nextTo: string } | { between: string } | { after: string }>;

/**
 * SQL: what follows what in a list, as lib/protocol/in-order has it. Items are looked at one by one only where something can follow,
 * and where they are of several places.
 * @param onePlace all items whose place is known are of one and the same.
 */
export function inOrderSql(
  condition: Ordered,
  list: (aggregate: string) => string,
  of: (part: Condition) => string,
  onePlace: boolean,
): string {
  if ("after" in condition && onePlace)
    return afterLast(of(condition.each), of(condition.comes), list);
  const [p, q, r] =
    "after" in condition
      ? [of(condition.each), of(condition.comes), "false"]
      : [
          of(condition.one),
          of(condition.other),
          "between" in condition ? of(condition.lies) : "false",
        ];
  const columns = { p, q, r, place: "e.place", rank: "e.rank", loose: "e.loose" };
  const lists = Object.values(columns).map((column) => list(`array_agg(${column})`));
  const items = `x as materialized (select * from unnest(${lists.join(", ")}) x(${Object.keys(columns).join(", ")}))`;
  const none = (one: string) => `coalesce(${list(`bool_and((${one}) is false)`)}, true)`;
  const [nothing, then] =
    "after" in condition
      ? [none(p), "true"]
      : [`${none(p)} or ${none(q)}`, String("between" in condition)];
  return `(case when ${nothing} then ${then} else (with ${items} select ${asked(condition)} from x) end)`;
}

/** SQL: what follows the last follows all before it, so that how far each reaches says it. */
function afterLast(each: string, comes: string, list: (aggregate: string) => string): string {
  const last = (that: string) => list(`max(e.rank) filter (where not e.loose and ${that})`);
  const open = (that: string) => list(`bool_or(e.loose and ${that})`);
  const [canBe, canCome] = [`(${each}) is not false`, `(${comes}) is not false`];
  const found = `case when coalesce(${last(canBe)} < ${last(`(${comes})`)}, ${last(canBe)} is null) then true
      when ${last(`(${each})`)} >= coalesce(${last(canCome)}, ${last(`(${each})`)}) then false end`;
  return `(${settled(found, { true: open(canBe), false: open(canCome) })})`;
}

const loose = (can: string) => `bool_or(loose and (${can}))`;
const follows = "b.place = a.place and b.rank > a.rank and not a.loose and not b.loose";
const pairs = `x a join x b on ${follows}`;
const inside =
  "from x k where k.place = a.place and k.rank > a.rank and k.rank < b.rank and not k.loose";
const change = "((a.p and b.q) or (a.q and b.p))";
const oneOrOther = "p is not false or q is not false";

function asked(condition: Ordered): string {
  if ("after" in condition)
    return settled(
      everyOf(
        `select (not a.p or ${someOf(`select b.q from x b where ${follows}`)}) as q from x a where not a.loose`,
      ),
      { false: loose("q is not false"), true: loose("p is not false") },
    );
  if ("nextTo" in condition)
    // Whatever it is, an item whose place is not known may stand between two that seem to be neighbours.
    return settled(
      someOf(`select ${change} as q from ${pairs} where not exists (select ${inside})`),
      { true: loose("true"), false: loose(oneOrOther) },
    );
  return settled(
    everyOf(`select (not ${change} or ${someOf(`select k.r as q ${inside}`)}) as q from ${pairs}`),
    { false: loose("r is not false"), true: loose(oneOrOther) },
  );
}

/** SQL: what was found by the items whose place is known, unless one whose place is not could change it. */
function settled(found: string, open: { readonly true: string; readonly false: string }): string {
  return `case (${found}) when true then case when not ${open.true} then true end when false then case when not ${open.false} then false end end`;
}
