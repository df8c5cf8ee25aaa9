import { count } from "./quantity";

/** Counts of people under this are not shown (common practice for published counts). */
export const fewestPeople = 5;

/**
 * A count of people: null where it is masked. Nobody at all is said as 0; one to four are masked. No total of people is
 * shown anywhere beside these, so that a masked count cannot be worked out by subtraction.
 */
export function peopleCount(people: number): number | null {
  return people > 0 && people < fewestPeople ? null : people;
}

/** The same in words. */
export function peopleWords(people: number | null): string {
  return people === null ? `masked (fewer than ${fewestPeople})` : count(people);
}
