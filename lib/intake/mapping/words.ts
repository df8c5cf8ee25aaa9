import type { Word } from "./feed";
import { type Notation, numberReader, numberShape } from "./numbers";

/** What a word of the file means: in the record format, or null for "not recorded". */
export type Meaning = {
  readonly means: string | null;
  readonly also: Readonly<Record<string, string>>;
};

const mark = "{number}";

/** Looks cells up among the words of a feed, whatever their case and blanks; undefined for one that is none of them. */
export function wordReader(
  words: readonly Word[],
  notation: Notation,
): (text: string) => Meaning | undefined {
  const whole = new Map<string, Word>();
  const withNumber: { shape: RegExp; word: Word }[] = [];
  for (const word of words) {
    if (!word.word.includes(mark)) whole.set(alike(word.word), word);
    else withNumber.push({ shape: shapeOf(word.word, notation), word });
  }
  const plainNumber = numberReader(notation);
  return (text) => {
    const same = alike(text);
    const found = whole.get(same);
    if (found) return meaning(found, "");
    for (const { shape, word } of withNumber) {
      const number = shape.exec(same)?.[1];
      if (number !== undefined) return meaning(word, plainNumber(number.toUpperCase()) ?? number);
    }
    return undefined;
  };
}

function meaning({ means, also = {} }: Word, number: string): Meaning {
  const filled = (text: string) => text.replaceAll(mark, number);
  return {
    means: means === null ? null : filled(means),
    also: Object.fromEntries(Object.entries(also).map(([field, text]) => [field, filled(text)])),
  };
}

function shapeOf(word: string, notation: Notation): RegExp {
  const [before = "", ...after] = alike(word).split(mark);
  const number = numberShape(notation);
  return new RegExp(`^${quoted(before)}(${number})${after.map(quoted).join(number)}$`, "i");
}

/** Texts that a person takes for the same. */
export function alike(text: string): string {
  return text.normalize("NFC").replace(/\s+/g, " ").trim().toLowerCase();
}

function quoted(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
