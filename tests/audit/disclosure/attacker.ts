import { lineKey } from "@/lib/audit/disclosure/line-key";
import type { Masks } from "@/lib/audit/disclosure/masks";
import type { Place } from "@/lib/measures/people-behind";
import { type Clue, Puzzle, sumOf } from "./puzzle";
import { isAt, outcomes, placesOf, times, type Visit } from "./random-group";

/** A count that somebody may want to know, by what it is a sum of; and what it is in truth. */
export type Wanted = {
  readonly table: Table;
  readonly key: string;
  readonly cell: string;
  readonly terms: ReadonlyMap<string, number>;
  readonly truth: number;
  readonly masked: boolean;
  /** It rests on one to four people. */
  readonly few: boolean;
};

export type Table = "every" | "rare" | "patients" | "clinicians";

/**
 * Somebody who holds every export of the year: each practice's and the group's of each month, quarter and the year. They know
 * what the files say, that a masked line is not empty, that a part has no more people than the whole nor the whole more
 * than its parts together, that patients are no more than visits and a rare unit is a visit. They know no mask's reason.
 */
export function attack(
  visits: readonly Visit[],
  masks: Masks,
): { wanted: Wanted[]; puzzle: Puzzle } {
  const clues: Clue[] = [];
  const wanted: Wanted[] = [];
  const places = placesOf(visits);
  const atoms = places.flatMap((place) => (place.kind === "chair" ? [place] : []));
  for (const table of ["every", "rare"] as const)
    for (const place of places)
      for (const { name, months } of times) {
        if (table === "rare" && place.kind === "chair") continue;
        const key = lineKey(place, name);
        const here = visits.filter((one) => isAt(one, place) && months.includes(one.month));
        const some = here.filter((one) => one[table] !== null);
        const pieces = atoms
          .filter((one) => holds(place, one))
          .flatMap((one) => months.map((month) => `${table} ${one.code} ${month}`));
        const hidden = masks.places.has(key);
        const masked = hidden || (masks.criteria.get(table)?.has(key) ?? false);
        const eligible = some.filter((one) => one[table] !== "left out");
        const inAll = isFew(people(some)) || isFew(people(here));
        const few = inAll || isFew(people(eligible));
        for (const outcome of outcomes) {
          const terms = sumOf(pieces.map((piece) => `${piece} ${outcome}`));
          const truth = some.filter((one) => one[table] === outcome).length;
          wanted.push({ table, key, cell: outcome, terms, truth, masked, few });
          if (!masked) clues.push({ terms, least: truth, most: truth });
        }
        const all = sumOf(pieces.flatMap((piece) => outcomes.map((one) => `${piece} ${one}`)));
        wanted.push({
          table,
          key,
          cell: "in all",
          terms: all,
          truth: some.length,
          masked,
          few: inAll,
        });
        if (masked && (!hidden || table === "every"))
          clues.push({ terms: all, least: 1, most: Number.POSITIVE_INFINITY });
        if (masked && !hidden && table === "rare")
          clues.push({ terms: all, least: 1, most: here.length });
      }
  for (const table of ["patients", "clinicians"] as const)
    for (const place of places.filter(({ kind }) => kind === "practice"))
      peopleOf(table, place, visits, masks, { clues, wanted });
  return { wanted, puzzle: new Puzzle(clues) };
}

function peopleOf(
  table: "patients" | "clinicians",
  place: Place,
  visits: readonly Visit[],
  masks: Masks,
  found: { clues: Clue[]; wanted: Wanted[] },
): void {
  const name = (period: string) => `${table} ${lineKey(place, period)}`;
  for (const { name: period, months } of times) {
    const here = visits.filter((one) => isAt(one, place) && months.includes(one.month));
    const truth = new Set(here.map((one) => (table === "patients" ? one.patient : one.clinician)))
      .size;
    const key = lineKey(place, period);
    const masked = (table === "patients" ? masks.places : masks.clinicians).has(key);
    const terms = sumOf([name(period)]);
    const of = { table, key, cell: "people", terms, truth, masked, few: isFew(truth) };
    found.wanted.push(of);
    found.clues.push(
      masked
        ? { terms, least: 1, most: Number.POSITIVE_INFINITY }
        : { terms, least: truth, most: truth },
    );
    const parts = times.filter(
      (one) => one.name !== period && one.months.every((month) => months.includes(month)),
    );
    const length = months.length === 12 ? 3 : 1;
    const direct = parts.filter((one) => one.months.length === length).map((one) => name(one.name));
    for (const part of direct)
      found.clues.push({
        terms: new Map([
          [name(period), 1],
          [part, -1],
        ]),
        least: 0,
        most: Number.POSITIVE_INFINITY,
      });
    if (direct.length > 0)
      found.clues.push({
        terms: new Map([...sumOf(direct), [name(period), -1]]),
        least: 0,
        most: Number.POSITIVE_INFINITY,
      });
    const chairs = placesOf(visits).filter((one) => holds(place, one) && one.kind === "chair");
    const units = chairs.flatMap((one) =>
      one.kind === "chair"
        ? months.flatMap((month) => outcomes.map((o) => `every ${one.code} ${month} ${o}`))
        : [],
    );
    found.clues.push({
      terms: new Map([...sumOf(units), [name(period), -1]]),
      least: 0,
      most: Number.POSITIVE_INFINITY,
    });
  }
}

function people(visits: readonly { patient: string }[]): number {
  return new Set(visits.map(({ patient }) => patient)).size;
}

function isFew(count: number): boolean {
  return count > 0 && count < 5;
}

function holds(place: Place, chair: Place): boolean {
  if (chair.kind !== "chair") return false;
  if (place.kind === "group") return true;
  return place.kind === "practice" ? chair.practice === place.code : chair.code === place.code;
}
