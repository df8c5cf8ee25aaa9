import type { Condition } from "@/lib/protocol/condition";
import type { Field } from "@/lib/protocol/field";
import { fieldOf } from "@/lib/protocol/vocabulary";
import type { About } from "./about";
import { amongWords, isWords, joined, limitWords, recordedWords, saidOf } from "./field-sentence";
import { overListWords } from "./over-list-words";
import { partOf } from "./part";
import { setQuantity } from "./value-words";

/** Parts of which all, or any one, must hold. */
type Group = { readonly how: "all" | "any"; readonly parts: readonly Condition[] };

/** A condition as a part of a sentence: "the canal was filled and the volume is 10 mL or more". */
export function conditionWords(condition: Condition, about: About): string {
  const { core, negated, unrecorded } = partOf(condition);
  const words = coreWords(core, negated, about);
  if (unrecorded === "open" || "recorded" in core) return words;
  return unrecorded === "no" ? `it is known that ${words}` : `${words}, or that is not recorded`;
}

/** Is it true of everything. */
export function isWhatever(condition: Condition): boolean {
  return "all" in condition && condition.all.length === 0;
}

/** The parts of a condition that is a group; null where it is a single one. */
export function groupOf(condition: Condition): Group | null {
  if ("all" in condition) return { how: "all", parts: condition.all };
  return "any" in condition ? { how: "any", parts: condition.any } : null;
}

/** The field of that name that a condition can be about; one that there is not is called by its name. */
export function fieldAbout({ unit, list }: About, name: string): Field {
  const found = list ? list.fields.find((field) => field.name === name) : fieldOf(unit, name);
  return found ?? { name, words: name === "" ? "…" : name, kind: "text" };
}

function coreWords(core: Condition, negated: boolean, about: About): string {
  const { own } = about;
  if ("recorded" in core) return recordedWords(fieldAbout(about, core.recorded), negated, own);
  if ("field" in core) {
    const field = fieldAbout(about, core.field);
    if ("is" in core) return isWords(field, core.is, negated, own);
    if ("among" in core) return amongWords(field, core.among, negated, own);
    const limit =
      "atLeast" in core
        ? limitWords(core.atLeast, "least", negated, field.unit)
        : limitWords(core.atMost, "most", negated, field.unit);
    return saidOf(field, limit, false, own);
  }
  const group = groupOf(core);
  if (group) return groupWords(group, negated, about);
  // Neither `not` nor `known` is left.
  return overListWords(core as Parameters<typeof overListWords>[0], negated, about, conditionWords);
}

function groupWords(group: Group, negated: boolean, about: About): string {
  const { how, parts } = group;
  if (parts.length === 0) return (how === "all") !== negated ? "anything" : "nothing at all";
  const text =
    how === "any" && parts.some((part) => (groupOf(part)?.parts.length ?? 0) > 1)
      ? parts.map((part) => conditionWords(part, about)).join("; or ")
      : joined(
          inRanges(group, about).map(({ part, words }) => words ?? nested(part, how, about)),
          how === "all" ? "and" : "or",
        );
  if (!negated) return text;
  return how === "all" ? `it is not so that ${text}` : `it is not so that either ${text}`;
}

/** Choices within a group that all must hold are set off by a word before them. */
function nested(part: Condition, within: Group["how"], about: About): string {
  const words = conditionWords(part, about);
  const inner = groupOf(part);
  return within === "all" && inner?.how === "any" && inner.parts.length > 1
    ? `either ${words}`
    : words;
}

/** At least and at most of one field, one after the other, are a range: "the strength is 0.5 to 6 %". */
function inRanges(group: Group, about: About): { part: Condition; words: string | null }[] {
  const { how, parts } = group;
  if (how === "any") return parts.map((part) => ({ part, words: null }));
  const found: { part: Condition; words: string | null }[] = [];
  for (let place = 0; place < parts.length; place += 1) {
    const [part, next] = [parts[place], parts[place + 1]];
    if (!part) continue;
    const words = next ? rangeWords(part, next, about) : null;
    found.push({ part, words });
    if (words !== null) place += 1;
  }
  return found;
}

function rangeWords(low: Condition, high: Condition, about: About): string | null {
  if (!("field" in low && "atLeast" in low && "field" in high && "atMost" in high)) return null;
  if (low.field !== high.field || low.atLeast === null || high.atMost === null) return null;
  const field = fieldAbout(about, low.field);
  const range = `${setQuantity(low.atLeast, undefined)} to ${setQuantity(high.atMost, field.unit)}`;
  return saidOf(field, range, false, about.own);
}
