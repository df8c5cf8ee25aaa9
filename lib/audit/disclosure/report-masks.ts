import type { Place } from "@/lib/measures/people-behind";
import type { Subject } from "@/lib/measures/tally";
import type { Criterion } from "@/lib/protocol/criterion";
import { countsOverall } from "@/lib/protocol/overall";
import type { Period } from "@/lib/records/period";
import { lineKey } from "./line-key";
import type { Masks } from "./masks";

/** What of one report is masked. */
export type ReportMasks = {
  /** A criterion's line, by its id. */
  readonly line: (about: Subject, criterion: string) => boolean;
  /** Both overall scores. */
  readonly score: (about: Subject) => boolean;
  readonly people: (practice: string, who: "patients" | "clinicians") => boolean;
};

/** Nothing is: what is read on the screen and does not leave the house. */
export const nothingMasked: ReportMasks = {
  line: () => false,
  score: () => false,
  people: () => false,
};

/**
 * The masks of a period for a report of some practices. The sum of several practices that are not the whole group is in no other
 * export: it is published where each of them is, as then it tells nothing more. A score adds up all criteria that count at a
 * visit; where all of them count visits it would give a masked one away as the rest, and is masked with it. Where some count
 * canals or uses, at how many visits those were met is published nowhere.
 */
export function reportMasks(
  masks: Masks,
  of: {
    readonly period: Period;
    readonly wholeGroup: boolean;
    readonly practices: readonly string[];
    readonly criteria: readonly Criterion[];
  },
): ReportMasks {
  const overall = of.criteria.filter(countsOverall);
  const ofVisits = overall.every(({ unit }) => unit === "visit");
  const placesOf = (about: Subject): Place[] => {
    if (about.kind === "clinician") throw new Error("nothing of a clinician leaves the house");
    return about.kind === "group" && !of.wholeGroup
      ? of.practices.map((code) => ({ kind: "practice", code }))
      : [about];
  };
  const line = (about: Subject, criterion: string) =>
    placesOf(about).some((place) => {
      const key = lineKey(place, of.period.name);
      return masks.places.has(key) || masks.criteria.get(criterion)?.has(key) === true;
    });
  return {
    line,
    score: (about) => line(about, "") || (ofVisits && overall.some(({ id }) => line(about, id))),
    people: (practice, who) =>
      masks[who === "patients" ? "places" : "clinicians"].has(
        lineKey({ kind: "practice", code: practice }, of.period.name),
      ),
  };
}
