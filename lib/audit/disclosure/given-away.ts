import { type Atom, atomsOf } from "./atoms";
import type { Line, Masked, Published } from "./published";

/** A line that rests on few people, and pieces of it of which something can be known. */
export type Leak = { readonly line: Line; readonly atom: Atom };

/**
 * Lines of few people that what is published may give away. A line is safe when each of its atoms is in no published line,
 * or holds people outside the line too and in one of its pieces two or more. Proof: then a person's records can change
 * places with others of the atom, or go over to where a piece stays with somebody, across the edge of the line. No published
 * line changes (each holds the whole atom or none of it), no line becomes empty or ceases to be, and each count of the line
 * that is not 0, of whatever kind, is another in one of these worlds. So it can be worked out by no means.
 */
export function givenAway(of: Published, masked: Masked): Leak[] {
  const atoms = atomsOf(of, masked);
  const atomOf = new Map(atoms.flatMap((atom) => atom.pieces.map((piece) => [piece, atom])));
  return of.lines.flatMap((line) => {
    if (!line.few) return [];
    const inside = new Set(line.pieces);
    const touched = new Set(line.pieces.flatMap((piece) => atomOf.get(piece) ?? []));
    return [...touched]
      .filter((atom) => !isSafe(of, inside, atom.seen, atom.pieces))
      .map((atom) => ({ line, atom }));
  });
}

/** Can the people of some pieces that are not told apart be in the line or out of it. */
export function isSafe(
  { people }: Published,
  line: ReadonlySet<number>,
  seen: boolean,
  pieces: readonly number[],
): boolean {
  if (!seen) return true;
  return (
    pieces.some((piece) => !line.has(piece)) && pieces.some((piece) => (people[piece] ?? 0) > 1)
  );
}
