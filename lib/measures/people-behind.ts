import type { Subject } from "./tally";

/** What a line of an export is about: the whole, a practice, or a chair of one. */
export type Place = Exclude<Subject, { kind: "clinician" }>;

/** How many people are behind what is counted of a place in a period; to be masked before it is shown. */
export type Behind = {
  readonly about: Place;
  /** The period's name. */
  readonly period: string;
  /** All whose units are counted, left out or not. */
  readonly people: number;
  /** Those with a unit that is not left out, or neither that nor excepted: the fewest that are anybody at all. */
  readonly eligible?: number;
};
