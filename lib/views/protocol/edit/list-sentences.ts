import { type Condition, type OverList, whatever } from "@/lib/protocol/condition";
import type { List } from "@/lib/protocol/field";
import { listIn } from "@/lib/protocol/truth";
import type { Part } from "../part";

/** What can be asked of a list, as people choose it. */
export type SentenceName =
  | "some"
  | "none"
  | "every"
  | "not-every"
  | "total"
  | "between"
  | "not-between"
  | "after"
  | "not-after"
  | "next"
  | "not-next";

type Choice = { readonly value: SentenceName; readonly words: string };

/** The limits of a total as people choose them. */
export const totalEnds = [
  { value: "least", words: "at least" },
  { value: "most", words: "at most" },
  { value: "under", words: "under" },
  { value: "over", words: "over" },
] as const;
export type TotalEnd = (typeof totalEnds)[number]["value"];

/** What can be asked of the list; the order only where there is one. */
export function sentenceChoices(list: List): readonly Choice[] {
  const { item } = list;
  return [
    { value: "some", words: `there is a ${item} …` },
    { value: "none", words: `there is no ${item} …` },
    { value: "every", words: `of every ${item} …` },
    { value: "not-every", words: `not of every ${item} …` },
    ...(list.fields.some(({ kind }) => kind === "number")
      ? [{ value: "total", words: "the total of … is …" } as const]
      : []),
    ...(list.ordered
      ? ([
          { value: "between", words: "wherever … and … follow each other, … lies in between" },
          { value: "not-between", words: "not wherever … and … follow each other, … lies between" },
          { value: "after", words: `after each ${item} … comes …` },
          { value: "not-after", words: `not after each ${item} … comes …` },
          { value: "next", words: "… and … are directly next to each other" },
          { value: "not-next", words: "… and … are never directly next to each other" },
        ] as const)
      : []),
  ];
}

export function isOverList(core: Condition): core is OverList {
  return ["some", "every", "total", "nextTo", "between", "after"].some((key) => key in core);
}

export function sentenceOf({ core, negated }: Part): SentenceName {
  if ("total" in core) return "total";
  if ("every" in core) return negated ? "not-every" : "every";
  if ("between" in core) return negated ? "not-between" : "between";
  if ("after" in core) return negated ? "not-after" : "after";
  if ("nextTo" in core) return negated ? "not-next" : "next";
  return negated ? "none" : "some";
}

export function totalEndOf({ core, negated }: Part): TotalEnd {
  if ("atMost" in core) return negated ? "over" : "most";
  return negated ? "under" : "least";
}

/** A sentence about a list; of what there was before, what fits is kept. */
export function sentence(name: SentenceName, list: List, before: Part): Part {
  const old = conditionsOf(before.core);
  const [which = whatever, second = whatever, third = whatever] = old;
  const negated = name === "none" || name.startsWith("not-");
  const core = ((): OverList => {
    if (name === "some" || name === "none") return { some: list.name, that: which };
    if (name === "every" || name === "not-every")
      return { every: list.name, that: which, are: second };
    if (name === "total") {
      const numbers = list.fields.filter(({ kind }) => kind === "number").map(({ name }) => name);
      // What is most often added up comes first.
      const first = ["volume_ml", "duration_s"].find((one) => numbers.includes(one)) ?? numbers[0];
      return { total: first ? [first] : [], of: list.name, that: which, atLeast: null };
    }
    if (name === "between" || name === "not-between")
      return { between: list.name, one: which, other: second, lies: third };
    if (name === "after" || name === "not-after")
      return { after: list.name, each: which, comes: second };
    return { nextTo: list.name, one: which, other: second };
  })();
  return { core, negated, unrecorded: before.unrecorded };
}

/** The same sentence about another list; conditions that its items cannot meet are left out. */
export function aboutList(part: Part, list: List): Part {
  const { core } = part;
  if (!isOverList(core)) return part;
  const has = (condition: Condition) => fitsItems(condition, list);
  const kept = Object.fromEntries(
    Object.entries(core).map(([key, value]) => {
      if (value === listIn(core)) return [key, list.name];
      if (key === "total")
        return [
          key,
          core && "total" in core ? core.total.filter((name) => hasField(list, name)) : [],
        ];
      return typeof value === "object" && value !== null && !Array.isArray(value)
        ? [key, has(value as Condition) ? value : whatever]
        : [key, value];
    }),
  );
  return { ...part, core: kept as OverList };
}

/** The total with another end; its limit stays. */
export function withTotalEnd(part: Part, end: TotalEnd): Part {
  const { core } = part;
  if (!("total" in core)) return part;
  const { total, of, that } = core;
  const limit = "atLeast" in core ? core.atLeast : core.atMost;
  const upper = end === "most" || end === "over";
  return {
    ...part,
    core: upper ? { total, of, that, atMost: limit } : { total, of, that, atLeast: limit },
    negated: end === "under" || end === "over",
  };
}

/** The total with another limit. */
export function withTotalLimit(part: Part, limit: number | null): Part {
  const { core } = part;
  if (!("total" in core)) return part;
  return {
    ...part,
    core: "atLeast" in core ? { ...core, atLeast: limit } : { ...core, atMost: limit },
  };
}

/** The name of the list that the sentence is about. */
export function listOfSentence(core: OverList): string {
  return listIn(core);
}

function conditionsOf(core: Condition): Condition[] {
  if (!isOverList(core)) return [];
  return Object.values(core).filter(
    (value): value is Condition =>
      typeof value === "object" && value !== null && !Array.isArray(value),
  );
}

function fitsItems(condition: Condition, list: List): boolean {
  if ("field" in condition) return hasField(list, condition.field);
  if ("recorded" in condition) return hasField(list, condition.recorded);
  if ("known" in condition) return fitsItems(condition.known, list);
  if ("not" in condition) return fitsItems(condition.not, list);
  if ("all" in condition) return condition.all.every((part) => fitsItems(part, list));
  if ("any" in condition) return condition.any.every((part) => fitsItems(part, list));
  return false;
}

function hasField(list: List, name: string): boolean {
  return list.fields.some((field) => field.name === name);
}
