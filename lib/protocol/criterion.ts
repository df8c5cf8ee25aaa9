import type { Condition } from "./condition";

/** One demand of the protocol, as data. */
export type Criterion = {
  readonly id: string;
  readonly title: string;
  /** The demand in words. */
  readonly statement: string;
  readonly rationale: string;
  readonly source: string;
  readonly unit: "canal" | "visit" | "chair-day";
  /** Canals: only those of the treatment population; what is left out counts under its reason. */
  readonly treatmentPopulation: boolean;
  readonly populationInWords: string;
  /** Taken out first, counted under the first that applies. */
  readonly exclusions: readonly {
    readonly reason: string;
    readonly inWords: string;
    readonly when: Condition;
  }[];
  readonly met: Condition;
  /** Without this evidence, a unit that is neither met nor excepted is not recorded. */
  readonly evidence: Condition;
  /** A field that holds the coded reason why the unit was rightly not met, where there is one. */
  readonly exception: string | null;
  /** Share of eligible units that should meet it, and whose choice that is. */
  readonly target: number;
  readonly targetSource: string;
  /** Below this share of recorded units the figure is not assessable; null for criteria about recording itself. */
  readonly completenessFloor: number | null;
  /** What staff and equipment do together is not shown by clinician. */
  readonly byClinician: boolean;
};

export type Outcome =
  | { readonly outcome: "excluded"; readonly reason: string }
  | { readonly outcome: "excepted"; readonly reason: string }
  | { readonly outcome: "met" | "not met" | "not recorded" };
