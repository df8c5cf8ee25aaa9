/**
 * Units of a measure that are alike in all that tells subjects apart and in what they add to its counts: whose and where,
 * why they are left out, and of each unit the visit it is of (its place in the month's list of visits; of an instrument its
 * own id) and, of a continuous measure, its value, null where it is not recorded.
 */
export type Alike = {
  readonly chair: string;
  readonly clinician: string | null;
  /** Key of the clinician whose work it is. */
  readonly worker: string | null;
  /** Counts for this clinician alone, beside the one who did it. */
  readonly shared: boolean;
  readonly excluded: string | null;
  readonly excepted: string | null;
  /** What each unit adds: how many it stands for, and of a rate its events and its units with evidence. */
  readonly units: number;
  readonly numerator: number | null;
  readonly denominator: number | null;
  readonly missing: number;
  /** Of each unit. */
  readonly visits: readonly (number | string | null)[];
  /** Of each unit; null of a rate. */
  readonly values: readonly (number | null)[] | null;
  /** The measure's id and the units' stratum in one, where strata were asked for. */
  readonly measure?: string | undefined;
};

/** Whose the visits of a practice in a month are, each at its place. */
export type MonthVisits = {
  readonly ids: readonly number[];
  /** Place in `whose`. */
  readonly by: readonly number[];
  readonly whose: readonly (readonly [chair: string, clinician: string, worker: string])[];
};

/** What a practice did in a month: its visits' patients, and the units of each measure asked for. */
export type MonthUnits = {
  readonly practice: string;
  /** First day, YYYY-MM-DD. */
  readonly month: string;
  /** Of each visit, a number that is the patient's wherever they come. */
  readonly patients: readonly number[];
  /** Where it was asked for. */
  readonly visits?: MonthVisits;
  readonly units: ReadonlyMap<string, readonly Alike[]>;
};
