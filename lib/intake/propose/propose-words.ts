import { canalName } from "@/lib/records/canal-name";
import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import type { Word } from "../mapping/feed";
import type { SourceUnit } from "../mapping/source-units";
import { unitsFor } from "../mapping/units";
import { alike } from "../mapping/words";
import type { ColumnProfile } from "../recognise/recognised";
import { choiceFor, tickOf } from "./choice-synonyms";
import { unitNamed } from "./unit-names";

const number = /[-+]?\d+(?:[.,]\d+)?/;

/**
 * What the words of a column mean for a field, as far as that is likely; words that the record format has already need
 * no entry. A strength beside an irrigant's name fills its own field, whatever the number.
 */
export function proposedWords(field: Column, { words }: ColumnProfile): Word[] {
  const made = new Map<string, Word>();
  for (const { text } of words) {
    if (understood(field, text)) continue;
    const word = wordFor(field, text);
    if (word) made.set(alike(word.word), word);
  }
  return [...made.values()];
}

/** The words of a column that neither the record format has nor the proposal explains: a person must. */
export function openWords(field: Column, { words }: ColumnProfile): string[] {
  if (!["choice", "flag", "canal"].includes(field.type)) return [];
  return words.flatMap(({ text }) =>
    understood(field, text) || wordFor(field, text) ? [] : [text],
  );
}

/** A protocol step's state in a column of ticks. */
export function stepWords({ words }: ColumnProfile): Word[] {
  return words.flatMap(({ text }): Word[] => {
    const tick = tickOf(text);
    if (tick !== undefined)
      return [{ word: text, means: tick === null ? null : tick === "yes" ? "done" : "not-done" }];
    if (/^(n[/.]?a\.?|s[/.]o\.?|entf[aä]llt|no aplica)$/i.test(text))
      return [{ word: text, means: "not-applicable" }];
    return [];
  });
}

/** The one unit that stands beside the numbers of a column's cells, with the words that read it: 4.5 ml. */
export function unitInCells(
  { unit: own }: Column,
  { words }: ColumnProfile,
): { unit: SourceUnit; words: Word[] } | undefined {
  const found = new Map<string, SourceUnit>();
  for (const { text } of words) {
    const pattern = text.replace(number, "{number}");
    const unit = pattern.startsWith("{number}") && unitNamed(pattern.slice("{number}".length));
    if (unit && own && unitsFor(own).includes(unit)) found.set(alike(pattern), unit);
  }
  const [unit, ...others] = new Set(found.values());
  if (unit === undefined || others.length > 0) return undefined;
  return { unit, words: [...found.keys()].map((word) => ({ word, means: "{number}" })) };
}

function understood({ type, choices }: Column, text: string): boolean {
  if (type === "flag") return /^(yes|no)$/i.test(text);
  if (type === "canal") return canalName(text) !== undefined;
  return choices?.includes(text.toLowerCase()) === true;
}

function wordFor(field: Column, text: string): Word | undefined {
  if (field.type === "flag" || isTick(field)) {
    const tick = tickOf(text);
    if (tick !== undefined) return { word: text, means: tick };
    if (field.type === "flag") return undefined;
  }
  if (columnTypeHoldsNumber(field.type)) return undefined;
  if (text === "?") return { word: text, means: null };
  const choice = choiceFor(field.name, text);
  if (choice === undefined) return undefined;
  if (field.name !== "irrigant" || !/\d+(?:[.,]\d+)?\s*%/.test(text))
    return { word: text, means: choice };
  return {
    word: text.replace(number, "{number}"),
    means: choice,
    also: { concentration_pct: "{number}" },
  };
}

function isTick({ choices }: Column): boolean {
  return choices?.includes("yes") === true && choices.includes("no");
}
