import { holdersOf, type Masked, type Published } from "./published";

/**
 * Pieces that no published line tells apart: each line holds all of them or none. Whatever is published is the same wherever
 * in its atom a record lies, so that nobody can know more than what the atom holds together.
 */
export type Atom = {
  readonly pieces: readonly number[];
  /** Is it in any published line; of what is in none nothing at all is known. */
  readonly seen: boolean;
};

/** The atoms of what is published, in the order of their first pieces. */
export function atomsOf(of: Published, masked: Masked): Atom[] {
  const found = new Map<string, { pieces: number[]; seen: boolean }>();
  for (const [piece, holders] of holdersOf(of).entries()) {
    const published = holders.filter((place) => !masked.has(of.lines[place]?.key ?? ""));
    const name = published.join(" ");
    const atom = found.get(name) ?? { pieces: [], seen: published.length > 0 };
    atom.pieces.push(piece);
    found.set(name, atom);
  }
  return [...found.values()];
}
