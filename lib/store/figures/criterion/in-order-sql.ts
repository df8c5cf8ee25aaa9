import type { Condition, OverList } from "@/lib/protocol/condition";
import { everyOf, someOf } from "./kleene-sql";

type Ordered = Extract<OverList, { nextTo: string } | { between: string } | { after: string }>;

/** SQL: what follows what in a list, as lib/protocol/in-order has it. */
export function inOrderSql(
  condition: Ordered,
  list: string,
  of: (part: Condition) => string,
): string {
  const [p, q, r] =
    "after" in condition
      ? [of(condition.each), of(condition.comes), "false"]
      : [
          of(condition.one),
          of(condition.other),
          "between" in condition ? of(condition.lies) : "false",
        ];
  const items = `x as materialized (select ${p} as p, ${q} as q, ${r} as r, e.place, e.rank, e.loose from ${list} e)`;
  return `(with ${items} select ${asked(condition)} from x)`;
}

const none = (name: string) => `coalesce(bool_and(${name} is false), true)`;
const pairs = "x a join x b on b.place = a.place and b.rank > a.rank";
const inside = "from x k where k.place = a.place and k.rank > a.rank and k.rank < b.rank";
const change = "((a.p and b.q) or (a.q and b.p))";

function asked(condition: Ordered): string {
  if ("after" in condition)
    return `case when ${none("p")} then true
      when bool_or(loose and (p is not false or q is not false)) then null
      else ${everyOf(`select (not a.p or ${someOf("select b.q from x b where b.place = a.place and b.rank > a.rank")}) as q from x a`)} end`;
  if ("nextTo" in condition)
    // Whatever it is, an item whose place is not known may stand between two that seem to be neighbours.
    return `case when ${none("p")} or ${none("q")} then false
      when bool_or(loose) then null
      else ${someOf(`select ${change} as q from ${pairs} where not exists (select ${inside})`)} end`;
  return `case when ${none("p")} or ${none("q")} then true
    when bool_or(loose and (p is not false or q is not false or r is not false)) then null
    else ${everyOf(`select (not ${change} or ${someOf(`select k.r as q ${inside}`)}) as q from ${pairs}`)} end`;
}
