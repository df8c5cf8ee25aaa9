import type { Subject } from "@/lib/measures/tally";

/** What a line is about: the whole, a practice, or a chair of one. */
export type Place = Exclude<Subject, { kind: "clinician" }>;

/** How many people are behind what is counted of a place in a period. */
export type Behind = {
  readonly about: Place;
  /** The period's name. */
  readonly period: string;
  /** All whose units are counted, left out or not. */
  readonly people: number;
  /** Those with a unit that is not left out, where that can be fewer. */
  readonly eligible?: number;
};

/** What a line is known by. */
export function lineKey(about: Place, period: string): string {
  const place =
    about.kind === "chair"
      ? [about.practice, about.code]
      : about.kind === "practice"
        ? [about.code]
        : [];
  return JSON.stringify([...place, period]);
}

/** Does the first place hold the second. */
export function placeHolds(one: Place, other: Place): boolean {
  if (one.kind === "group") return true;
  if (other.kind === "group") return false;
  if (one.kind === "practice")
    return one.code === (other.kind === "practice" ? other.code : other.practice);
  return other.kind === "chair" && one.practice === other.practice && one.code === other.code;
}
