/** A line that may be published: all that is counted of the records of some pieces. */
export type Line = {
  readonly key: string;
  /** Places of its pieces, which are parts of the records without anything in common. */
  readonly pieces: readonly number[];
  readonly people: number;
  /** It rests on so few people that nothing of it may be known. */
  readonly few: boolean;
};

/** Everything that can be published of one table: every line of every export. */
export type Published = {
  readonly lines: readonly Line[];
  /** People in each piece, each with at least one; what is empty is no piece. */
  readonly people: readonly number[];
};

/** Keys of lines that are masked. */
export type Masked = ReadonlySet<string>;

/** For each piece the places of the lines that hold it. */
export function holdersOf({ lines, people }: Published): number[][] {
  const holders = people.map((): number[] => []);
  for (const [place, line] of lines.entries())
    for (const piece of line.pieces) holders[piece]?.push(place);
  return holders;
}
