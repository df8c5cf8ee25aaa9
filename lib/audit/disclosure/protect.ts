import { atomsOf } from "./atoms";
import { givenAway, isSafe, type Leak } from "./given-away";
import { holdersOf, type Line, type Masked, type Published } from "./published";

/**
 * The lines to be masked: those of few people, those already masked, and second ones, with the fewest people first, until none is
 * given away; then each second one that was not needed after all is published again, with the most people first. The same
 * lines give the same masks, in whatever order they come.
 */
export function protect(of: Published, already: Masked = new Set()): Set<string> {
  const few = of.lines.filter((line) => line.few).map(({ key }) => key);
  const first = new Set([...already, ...few]);
  const masked = new Set(first);
  for (let [leak] = givenAway(of, masked); leak; [leak] = givenAway(of, masked))
    for (const { key } of cheapest(of, masked, leak)) masked.add(key);
  const second = of.lines.filter(({ key }) => masked.has(key) && !first.has(key));
  for (const { key } of second.sort((one, other) => -bySize(one, other))) {
    masked.delete(key);
    if (givenAway(of, masked).length > 0) masked.add(key);
  }
  return masked;
}

/**
 * What to mask so that a leak is mended: the lines that tell a piece of it apart from one outside, or every line that
 * holds it; whichever has the fewest people.
 */
function cheapest(of: Published, masked: Masked, { line, atom }: Leak): Line[] {
  const holders = holdersOf(of);
  const inside = new Set(line.pieces);
  const published = (piece: number) =>
    (holders[piece] ?? [])
      .flatMap((place) => of.lines[place] ?? [])
      .filter(({ key }) => !masked.has(key));
  const [from] = atom.pieces;
  if (from === undefined) return [];
  const here = published(from);
  const ways = [here];
  for (const other of atomsOf(of, masked)) {
    const [to] = other.pieces;
    if (to === undefined || other === atom || !other.seen) continue;
    if (!isSafe(of, inside, true, [...atom.pieces, ...other.pieces])) continue;
    const there = published(to);
    ways.push([
      ...here.filter((one) => !there.includes(one)),
      ...there.filter((one) => !here.includes(one)),
    ]);
  }
  const costs = ways.map((way) => ({
    way,
    people: way.reduce((sum, { people }) => sum + people, 0),
    name: way
      .map(({ key }) => key)
      .sort()
      .join(),
  }));
  costs.sort((one, other) => one.people - other.people || (one.name < other.name ? -1 : 1));
  return costs[0]?.way ?? [];
}

/** Fewest people first; of as many, by key. */
function bySize(one: Line, other: Line): number {
  return one.people - other.people || (one.key < other.key ? -1 : 1);
}
