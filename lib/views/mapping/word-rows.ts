import type { ColumnWords } from "./column-words";
import type { ColumnFeedDraft, WordDraft } from "./draft";
import { type FieldTerms, holdsTime } from "./terms";
import { wordFor } from "./word-match";

/** A word of a column beside what the mapping says of it. */
export type WordRow = {
  readonly word: string;
  /** How many cells; empty where it stands for several words or none. */
  readonly count: string;
  /** Place among the mapping's words; null where the mapping says nothing of it. */
  readonly place: number | null;
  readonly said: WordDraft | null;
  /** It is right as it stands, or something is said of it. */
  readonly understood: boolean;
};

/**
 * Words of the mapping that stand for several or are not in the column, then the words of the column that are no plain numbers
 * or moments, in the column's order, so that a row stays where it is when something is said of it.
 */
export function wordRows(
  field: FieldTerms,
  feed: ColumnFeedDraft,
  column: ColumnWords | null,
): WordRow[] {
  const words = feed.words ?? [];
  const found = (column?.words ?? []).flatMap(({ text, count }): WordRow[] => {
    const said = wordFor(words, text) ?? null;
    if (said?.word.includes("{number}")) return [];
    if (!said && isPlain(field, text)) return [];
    const understood = said !== null || standsRight(field, text);
    return [{ word: text, count, place: said && words.indexOf(said), said, understood }];
  });
  const shown = new Set(found.map(({ said }) => said));
  const others = words.flatMap((said, place): WordRow[] =>
    shown.has(said) ? [] : [{ word: said.word, count: "", place, said, understood: true }],
  );
  return [...others, ...found];
}

/** Words of which something has to be said before they are taken. */
export function notUnderstood(rows: readonly WordRow[]): number {
  return rows.filter(({ understood }) => !understood).length;
}

function isPlain(field: FieldTerms, text: string): boolean {
  if (text === "") return false;
  if (holdsTime(field)) return /\d/.test(text);
  const isNumber = field.type === "number" || field.type === "whole" || field.type === "count";
  return isNumber && /^[-+]?[\d.,:'\s]*\d[\d.,:'\s]*$|^P[T\d]/i.test(text);
}

function standsRight({ choices, required, type }: FieldTerms, text: string): boolean {
  if (text === "") return !required;
  if (choices.length > 0) return choices.some(({ value }) => value === text.trim().toLowerCase());
  return type !== "number" && type !== "whole" && !holdsTime({ type });
}
