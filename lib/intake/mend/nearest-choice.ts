import { choiceFor } from "../propose/choice-synonyms";

/** What people call things in everyday words, beside the format's own. */
const everyday: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  irrigant: {
    bleach: "naocl",
    hypochlorite: "naocl",
    chlorhexidine: "chx",
    etidronate: "hedp",
    saltwater: "saline",
  },
};

/**
 * The choice that a wrong word of a column most likely means: one that is known for it, else the one nearest in spelling where no more than
 * a third of its letters differ and no other is as near. It is only ever offered. Undefined where none is likely.
 */
export function nearestChoice(
  column: string,
  word: string,
  choices: readonly string[],
): string | undefined {
  const text = word.trim().toLowerCase();
  if (text === "") return undefined;
  const known = choiceFor(column, text);
  if (known && choices.includes(known)) return known;
  const words = [
    ...choices.map((choice) => [choice, choice] as const),
    ...Object.entries(everyday[column] ?? {}),
  ];
  const most = Math.max(1, Math.floor(text.length / 3));
  let least = most + 1;
  let found = new Set<string>();
  for (const [spelt, choice] of words) {
    const distance = editDistance(text, spelt.toLowerCase());
    if (distance < least) found = new Set();
    if (distance <= least && distance <= most) found.add(choice);
    least = Math.min(least, distance);
  }
  const [only] = found;
  return found.size === 1 ? only : undefined;
}

/** How many letters have to be put in, taken out or changed (Levenshtein 1966). */
function editDistance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, place) => place);
  for (const [place, letter] of [...one].entries()) {
    const next = [place + 1];
    for (const [column, facing] of [...other].entries())
      next.push(
        Math.min(
          (row[column + 1] ?? 0) + 1,
          (next[column] ?? 0) + 1,
          (row[column] ?? 0) + (letter === facing ? 0 : 1),
        ),
      );
    row = next;
  }
  return row.at(-1) ?? 0;
}
