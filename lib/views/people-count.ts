import { fewestPeople, fewPeople } from "@/lib/audit/disclosure/few-people";
import { count } from "./quantity";

/** A count of people: null where it is masked. Nobody at all is said as 0; one to four are masked. */
export function peopleCount(people: number): number | null {
  return fewPeople(people) ? null : people;
}

/** The same in words. */
export function peopleWords(people: number | null): string {
  return people === null ? `masked (fewer than ${fewestPeople})` : count(people);
}
