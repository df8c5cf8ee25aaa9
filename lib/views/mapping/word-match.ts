import type { WordDraft } from "./draft";

const mark = "{number}";
const number = String.raw`[-+]?\d[\d.,'\s]*`;

/** The word of a mapping that a cell is, whatever case and blanks; undefined where none is. */
export function wordFor(words: readonly WordDraft[], cell: string): WordDraft | undefined {
  const text = alike(cell);
  return (
    words.find(({ word }) => !word.includes(mark) && alike(word) === text) ??
    words.find(({ word }) => word.includes(mark) && shape(word).test(text))
  );
}

/** A cell with its only number taken for any number; undefined where it has none or several. */
export function withAnyNumber(cell: string): string | undefined {
  const found = cell.match(/\d+(?:[.,]\d+)*/g) ?? [];
  const [only] = found;
  return found.length === 1 && only !== undefined ? cell.replace(only, mark) : undefined;
}

function shape(word: string): RegExp {
  const parts = alike(word)
    .split(mark)
    .map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${parts.join(number)}$`, "i");
}

function alike(text: string): string {
  return text.normalize("NFC").replace(/\s+/g, " ").trim().toLowerCase();
}
