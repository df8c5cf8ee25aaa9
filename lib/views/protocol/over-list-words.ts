import type { Condition, OverList } from "@/lib/protocol/condition";
import type { Field, List } from "@/lib/protocol/field";
import { listIn } from "@/lib/protocol/truth";
import { listOf } from "@/lib/protocol/vocabulary";
import { irrigantWords } from "../record-words";
import type { About } from "./about";
import { fieldWords, joined, limitWords } from "./field-sentence";
import { type ListWords, listWords } from "./list-words";
import { partOf } from "./part";

type Say = (condition: Condition, about: About) => string;
/** An item such that …, and where it is. */
type Item = (part: Condition, where?: string) => string;

/** What is asked of a list, as a part of a sentence. `say` puts conditions into words. */
export function overListWords(
  condition: OverList,
  negated: boolean,
  about: About,
  say: Say,
): string {
  const name = listIn(condition);
  const list = listOf(about.unit, name) ?? unknownList(name);
  const words = listWords(list, about.own);
  const { one, several, where } = words;
  const within = { ...about, list };
  const item: Item = (part, at = "") => itemWords(part, at, within, say);
  if ("some" in condition) {
    if (name === "gaps") return `${negated ? "no other" : "another"} criterion lacks its evidence`;
    return `there is ${negated ? "no" : article(one)} ${one}${item(condition.that, where)}`;
  }
  if ("every" in condition) {
    const text = `of every ${one}${item(condition.that, where)}, ${say(condition.are, within)}`;
    return negated ? `it is not so that ${text}` : text;
  }
  if ("total" in condition) {
    const fields = condition.total.map((field) => fieldOfList(list, field));
    const added = joined(
      fields.map((field) => fieldWords(field, about.own)),
      "and",
    );
    const unit = fields[0]?.unit;
    const limit =
      "atLeast" in condition
        ? limitWords(condition.atLeast, "least", negated, unit)
        : limitWords(condition.atMost, "most", negated, unit);
    return `${added || "…"} of all ${several}${item(condition.that, where)} together ${fields.length > 1 ? "are" : "is"} ${limit}`;
  }
  return inOrderWords(condition, negated, words, item);
}

function inOrderWords(
  condition: Extract<OverList, { nextTo: string } | { between: string } | { after: string }>,
  negated: boolean,
  { one, where }: ListWords,
  item: Item,
): string {
  const turned = (text: string) => (negated ? `it is not so that ${text}` : text);
  if ("nextTo" in condition)
    return `${article(one)} ${one}${item(condition.one)} and one${item(condition.other)} ${negated ? "never " : ""}follow each other directly${where}`;
  if ("between" in condition)
    return turned(
      `wherever ${article(one)} ${one}${item(condition.one)} and one${item(condition.other)} follow each other${where}, one${item(condition.lies)} lies in between`,
    );
  return turned(
    `after each ${one}${item(condition.each, where)} there comes one${item(condition.comes)}`,
  );
}

/** Which items, and where: " of hypochlorite at the visit where the strength is 3 %"; of all of them only where. */
function itemWords(condition: Condition, where: string, about: About, say: Say): string {
  const parts = "all" in condition ? condition.all : [condition];
  const [first, ...rest] = parts;
  if (!first) return where;
  const short = shortWords(first);
  if (short === null) return `${where} where ${say(condition, about)}`;
  return `${short}${where}${rest.length === 0 ? "" : ` where ${say({ all: rest }, about)}`}`;
}

function shortWords(condition: Condition): string | null {
  const { core, negated, unrecorded } = partOf(condition);
  if (negated || unrecorded !== "open" || !("field" in core)) return null;
  const values = "is" in core ? [String(core.is)] : "among" in core ? core.among : [];
  if (values.length === 0 || values.includes("")) return null;
  if (core.field === "irrigant") return ` of ${joined(values.map(irrigantWords), "or")}`;
  return core.field === "delivery" && values.join() === "syringe" ? " by syringe" : null;
}

function fieldOfList(list: List, name: string): Field {
  const found = list.fields.find((field) => field.name === name);
  return found ?? { name, words: name || "…", kind: "number" };
}

function unknownList(name: string): List {
  return { name, words: name, item: "item", fields: [], ordered: false };
}

function article(noun: string): string {
  return /^[aeio]/.test(noun) ? "an" : "a";
}
