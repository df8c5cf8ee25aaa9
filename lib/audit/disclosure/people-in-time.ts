import { fewestPeople, fewPeople } from "./few-people";
import type { Masked } from "./published";

/** How many people came in a period, and in the periods that make it up; the same person may come in several. */
export type PeopleInTime = {
  readonly key: string;
  readonly people: number;
  readonly parts: readonly PeopleInTime[];
};

type Bounds = { least: number; most: number };

/**
 * Keys of masked counts of few people that the published ones leave but one value, for whoever knows that few is 1 to 4. A
 * whole has no fewer people than any of its parts and no more than all together; every count within that can be, so that
 * one pass up and one down give the narrowest bounds.
 */
export function peopleGivenAway(whole: PeopleInTime, masked: Masked): string[] {
  const bounds = boundsOf(whole, masked);
  return inOrder(whole)
    .filter(({ key, people }) => masked.has(key) && fewPeople(people))
    .filter(({ key }) => bounds.get(key)?.least === bounds.get(key)?.most)
    .map(({ key }) => key);
}

/** The counts to be masked: those of few people, those already masked, and others with the fewest people first, until none is given away. */
export function protectPeople(whole: PeopleInTime, already: Masked = new Set()): Set<string> {
  const all = inOrder(whole);
  const few = all.filter(({ people }) => fewPeople(people)).map(({ key }) => key);
  const first = new Set([...already, ...few]);
  const masked = new Set(first);
  const bySize = all
    .filter(({ key, people }) => people > 0 && !first.has(key))
    .sort((one, other) => one.people - other.people || (one.key < other.key ? -1 : 1));
  for (const { key } of bySize) {
    if (peopleGivenAway(whole, masked).length === 0) break;
    masked.add(key);
  }
  for (const { key } of [...bySize].reverse()) {
    if (!masked.delete(key)) continue;
    if (peopleGivenAway(whole, masked).length > 0) masked.add(key);
  }
  return masked;
}

function boundsOf(whole: PeopleInTime, masked: Masked): Map<string, Bounds> {
  const bounds = new Map<string, Bounds>();
  const of = ({ key }: PeopleInTime): Bounds => bounds.get(key) ?? { least: 0, most: 0 };
  for (const one of inOrder(whole).reverse()) {
    const parts = one.parts.map(of);
    const known = masked.has(one.key)
      ? { least: 1, most: fewPeople(one.people) ? fewestPeople - 1 : Number.POSITIVE_INFINITY }
      : { least: one.people, most: one.people };
    bounds.set(one.key, {
      least: Math.max(known.least, ...parts.map(({ least }) => least)),
      most: Math.min(known.most, parts.length > 0 ? sum(parts) : Number.POSITIVE_INFINITY),
    });
  }
  for (const one of inOrder(whole)) {
    const { least, most } = of(one);
    const before = one.parts.map(of);
    for (const [place, part] of one.parts.entries()) {
      const own = of(part);
      const others = sum(before.filter((_, other) => other !== place));
      bounds.set(part.key, {
        least: Math.max(own.least, least - others),
        most: Math.min(own.most, most),
      });
    }
  }
  return bounds;
}

/** A whole before its parts. */
function inOrder(whole: PeopleInTime): PeopleInTime[] {
  return [whole, ...whole.parts.flatMap(inOrder)];
}

function sum(bounds: readonly Bounds[]): number {
  return bounds.reduce((total, { most }) => total + most, 0);
}
