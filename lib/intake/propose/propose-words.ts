import type { Column } from "@/lib/records/column";
import type { Word } from "../mapping/feed";
import { alike } from "../mapping/words";
import type { ColumnProfile } from "../recognise/recognised";
import { choiceFor, tickOf } from "./choice-synonyms";

const number = /[-+]?\d+(?:[.,]\d+)?/;

/**
 * What the words of a column mean for a field with choices, as far as that is likely; words that the record format has already need
 * no entry. A strength beside an irrigant's name fills its own field, whatever the number.
 */
export function proposedWords(field: Column, { words }: ColumnProfile): Word[] {
  const made = new Map<string, Word>();
  for (const { text } of words) {
    if (field.choices?.includes(text.toLowerCase())) continue;
    const word = field.type === "flag" || isTick(field) ? ticked(text) : chosen(field, text);
    if (word) made.set(alike(word.word), word);
  }
  return [...made.values()];
}

/** A protocol step's state in a column of ticks. */
export function stepWords({ words }: ColumnProfile): Word[] {
  return words.flatMap(({ text }): Word[] => {
    const tick = tickOf(text);
    if (tick !== undefined)
      return [{ word: text, means: tick === null ? null : tick === "yes" ? "done" : "not-done" }];
    if (/^n[/.]?a\.?$/i.test(text)) return [{ word: text, means: "not-applicable" }];
    return [];
  });
}

function isTick({ choices }: Column): boolean {
  return choices?.includes("yes") === true && choices.includes("no");
}

function ticked(text: string): Word | undefined {
  const tick = tickOf(text);
  return tick === undefined ? undefined : { word: text, means: tick };
}

function chosen(field: Column, text: string): Word | undefined {
  if (text === "?") return { word: text, means: null };
  const choice = choiceFor(field.name, text);
  if (choice === undefined) return undefined;
  if (field.name !== "irrigant" || !number.test(text)) return { word: text, means: choice };
  return {
    word: text.replace(number, "{number}"),
    means: choice,
    also: { concentration_pct: "{number}" },
  };
}
