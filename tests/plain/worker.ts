import type { Records } from "./records";

/**
 * Whose work it is: the person that the code belongs to on that local day, both ends of a spell
 * included, else practice and code. Where spells overlap the one that began last wins, then the
 * person first by name.
 */
export function worker(records: Records, practice: string, code: string, day: string): string {
  const spells = records.people
    .filter((spell) => spell.practice === practice && spell.code === code)
    .filter((spell) => String(spell.from) <= day)
    .filter((spell) => spell.to === undefined || day <= String(spell.to))
    .map((spell) => ({ from: String(spell.from), person: String(spell.person) }))
    .sort((a, b) => compare(b.from, a.from) || compare(a.person, b.person));
  return spells[0] ? `person:${spells[0].person}` : `${practice}/${code}`;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
