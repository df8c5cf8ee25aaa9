import { type FontFace, widthOf } from "./font";

type Setting = { readonly width: number; readonly size: number; readonly face?: FontFace };

/** Words in lines no wider than this; a longer word is cut after a sign that joins its parts, else between letters. */
export function linesWithin(words: string, setting: Setting): string[] {
  return words.split("\n").flatMap((line) => linesOf(line, setting));
}

function linesOf(line: string, { width, size, face }: Setting): string[] {
  const measured = (text: string) => widthOf(text, size, face);
  const space = measured(" ");
  const lines: string[] = [];
  let [last, taken] = ["", 0];
  for (const word of line.split(" ").flatMap((whole) => parts(whole, width, measured))) {
    const wide = measured(word.letters);
    if (last !== "" && word.begins && taken + space + wide <= width) {
      [last, taken] = [`${last} ${word.letters}`, taken + space + wide];
    } else {
      if (last !== "") lines.push(last);
      [last, taken] = [word.letters, wide];
    }
  }
  return [...lines, last];
}

type Part = { letters: string; begins: boolean };

/** A word, or what it is cut into where it is too wide for any line. */
function parts(word: string, width: number, measured: (text: string) => number): Part[] {
  if (measured(word) <= width) return [{ letters: word, begins: true }];
  const cut: string[] = [];
  for (const joined of word.split(/(?<=[-–/_.,:;·@])/u)) {
    const last = cut.at(-1);
    if (last !== undefined && measured(last + joined) <= width) cut[cut.length - 1] = last + joined;
    else cut.push(...lettersWithin(joined, width, measured));
  }
  return cut.map((letters, place) => ({ letters, begins: place === 0 }));
}

function lettersWithin(word: string, width: number, measured: (text: string) => number): string[] {
  const cut: string[] = [];
  let last = "";
  for (const letter of word) {
    if (last !== "" && measured(last + letter) > width) {
      cut.push(last);
      last = "";
    }
    last += letter;
  }
  return [...cut, last];
}
