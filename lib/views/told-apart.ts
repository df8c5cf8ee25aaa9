import type { Subject } from "@/lib/measures/tally";
import { byKey } from "./by-key";
import { subjectId } from "./subject-id";

/**
 * Names for the subjects of figures where two have the same one: a code that belonged to two people in turn gets a
 * letter behind it, in the order of their keys and so the same wherever both stand. Others keep theirs.
 *
 * @param nameOf what a subject is called by itself
 */
export function toldApart<Of extends { readonly about: Subject }>(
  figures: readonly Of[],
  nameOf: (figure: Of) => string,
): (figure: Of) => string {
  const names = new Map<string, string>();
  for (const [name, same] of byKey(figures, nameOf)) {
    const ids = [...new Set(same.map((figure) => subjectId(figure.about)))].sort();
    for (const [place, id] of ids.entries())
      names.set(id, ids.length === 1 ? name : `${name} (${String.fromCharCode(97 + place)})`);
  }
  return (figure) => names.get(subjectId(figure.about)) ?? nameOf(figure);
}

/** Said where a code has a letter behind it. */
export const letterWords =
  "A letter behind a code tells two people apart who had the same code, one after the other.";
