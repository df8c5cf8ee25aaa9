import { isCommonPassword } from "./common-passwords";

/** Shortest password that is taken, in characters: what NIST SP 800-63B rev. 4 asks of one that may stand alone. */
export const shortestPassword = 15;
/** Longest; the same asks for 64 at least. */
export const longestPassword = 256;

/** A part of a person's own words that is long enough to count. */
const leastOwn = 4;

/**
 * What is wrong with a new password, as a sentence; null where it is taken. Any characters in any mixture are: length
 * and not being guessable is all that is asked. It is measured as it is kept, in Unicode's form NFKC.
 *
 * @param own words that whoever knows the person would try: their name, their email
 */
export function passwordTrouble(plain: string, own: readonly string[] = []): string | null {
  const text = plain.normalize("NFKC");
  const characters = [...text];
  if (characters.length < shortestPassword) {
    return `At least ${shortestPassword} characters: three or four words that nobody else would put together will do.`;
  }
  if (characters.length > longestPassword) return `At most ${longestPassword} characters.`;
  const plainest = text.toLowerCase();
  if (isGuessed(plainest)) return "This is among the first that anybody would try.";
  const left = ["canal", "audit", ...own.flatMap(wordsOf)]
    .sort((one, other) => other.length - one.length)
    .reduce((rest, word) => rest.replaceAll(word, ""), plainest);
  if ([...left].length < shortestPassword / 2 && left !== plainest) {
    return "Too much of it is your name, your email or the name of this tool.";
  }
  return null;
}

function isGuessed(text: string): boolean {
  const bare = text.replace(/^[\d\p{P}\p{S}\s]+|[\d\p{P}\p{S}\s]+$/gu, "");
  return isCommonPassword(text) || isCommonPassword(bare) || isRepeated(text) || isRow(text);
}

/** Nothing but a piece of it again and again. */
function isRepeated(text: string): boolean {
  const letters = [...text];
  for (let piece = 1; piece <= letters.length / 2; piece += 1) {
    if (letters.every((letter, place) => place < piece || letter === letters[place - piece])) {
      return true;
    }
  }
  return false;
}

/** A run of the alphabet or of digits, up or down, with at most three breaks. */
function isRow(text: string): boolean {
  const codes = [...text].map((letter) => letter.codePointAt(0) ?? 0);
  const breaks = codes.filter(
    (code, place) => place > 0 && Math.abs(code - (codes[place - 1] ?? 0)) > 1,
  );
  return breaks.length <= 3;
}

function wordsOf(own: string): string[] {
  const parts = own
    .normalize("NFKC")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u);
  return parts.filter((part) => [...part].length >= leastOwn);
}
