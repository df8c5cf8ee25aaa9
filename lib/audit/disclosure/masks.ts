import type { Behind } from "@/lib/measures/people-behind";
import type { Period } from "@/lib/records/period";
import { linesOf } from "./lines";
import { protectPeople } from "./people-in-time";
import { practicesInTime } from "./practices-in-time";
import { protect } from "./protect";
import type { Masked } from "./published";

/** The people behind everything that can be exported of the periods together, of every practice. */
export type PeopleBehind = {
  readonly periods: readonly Period[];
  /** Patients of visits by group, practice and chair. */
  readonly patients: readonly Behind[];
  /** Clinicians by practice. */
  readonly clinicians: readonly Behind[];
  /** Patients of each criterion's units, by its id; criteria whose units sit in no patient are left out. */
  readonly criteria: ReadonlyMap<string, readonly Behind[]>;
};

/** What is masked, by the keys of lines. */
export type Masks = {
  /** Places and periods of which nothing at all is published. */
  readonly places: Masked;
  readonly clinicians: Masked;
  /** Beside these what is masked of a criterion, by its id. */
  readonly criteria: ReadonlyMap<string, Masked>;
};

/**
 * What to mask so that all exports of the periods together give no line of few people away. It depends on the records alone and
 * not on what was exported or who asks, so that the same export is the same again. A place and period is masked for all
 * that is counted there, so that no two counts can be held against each other; criteria mask further lines of their own.
 */
export function masksOf({ periods, patients, clinicians, criteria }: PeopleBehind): Masks {
  const lines = linesOf(patients, periods);
  const inTime = practicesInTime(patients, periods);
  let places = protect(lines);
  for (let before = -1; before !== places.size; ) {
    before = places.size;
    for (const one of inTime) places = protectPeople(one, places);
    places = protect(lines, places);
  }
  const ofClinicians = practicesInTime(clinicians, periods).flatMap((one) => [
    ...protectPeople(one),
  ]);
  return {
    places,
    clinicians: new Set(ofClinicians),
    criteria: new Map(
      [...criteria].map(([id, behind]) => [id, protect(linesOf(behind, periods), places)]),
    ),
  };
}
