/** Counts of people under this are not shown (common practice for published counts). */
export const fewestPeople = 5;

/** So few that they could be known: nobody at all is no secret. */
export function fewPeople(people: number): boolean {
  return people > 0 && people < fewestPeople;
}
