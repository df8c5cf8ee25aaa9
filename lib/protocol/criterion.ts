import type { Condition } from "./condition";

/** What a criterion can be about, and what its figure counts. */
export const unitKinds = ["canal", "delivery", "use", "separation", "visit", "chair-day"] as const;
export type UnitKind = (typeof unitKinds)[number];

/** One demand of the protocol, as data. */
export type Criterion = {
  /** Kebab-case; a practice's own begin with "own-". */
  readonly id: string;
  readonly title: string;
  /** The demand in words. */
  readonly statement: string;
  readonly rationale: string;
  readonly source: string;
  readonly unit: UnitKind;
  /** Only canals of the treatment population, and what lies in them; what is left out counts under its reason. */
  readonly treatmentPopulation: boolean;
  /** Which units it is about; others are not counted at all. A unit of which this is unknown is not recorded. */
  readonly population: Condition;
  /** Taken out first, counted under the first that holds. A unit of which one is unknown is not recorded. */
  readonly exclusions: readonly Exclusion[];
  /** Met where true, not recorded where unknown, not met where false. */
  readonly met: Condition;
  /** How a unit may rightly not be met; null where none is foreseen. */
  readonly exceptions: Exceptions | null;
  /** Share of eligible units that should meet it, and whose choice that is. */
  readonly target: number;
  readonly targetSource: string;
  /** Below this share of recorded units the figure is not assessable; null for criteria about recording itself. */
  readonly completenessFloor: number | null;
  /** What staff and equipment do together is not shown by clinician. */
  readonly byClinician: boolean;
  /** The whole course is looked at: the unit counts for each clinician who worked on the canal in it. */
  readonly wholeCourse?: boolean;
};

export type Exclusion = {
  readonly reason: string;
  readonly inWords: string;
  readonly when: Condition;
};

/** An exception is a coded reason in the exceptions table, or a step with status excepted. */
export type Exceptions = {
  /** Steps whose status "excepted" counts, the first that has it. */
  readonly steps: readonly string[];
  /** The reasons offered; a record may bear another, which counts and is pointed out. */
  readonly reasons: readonly string[];
};

export type Outcome =
  | { readonly outcome: "excluded"; readonly reason: string }
  | { readonly outcome: "excepted"; readonly reason: string }
  | { readonly outcome: "met" | "not met" | "not recorded" };

/** A criterion's id as a measure's. */
export function criterionMeasure({ id }: { readonly id: string }): string {
  return `criterion/${id}`;
}

/** The criterion's id in a measure's; undefined where the measure is no criterion. */
export function criterionId(measure: string): string | undefined {
  return measure.startsWith("criterion/") ? measure.slice("criterion/".length) : undefined;
}
