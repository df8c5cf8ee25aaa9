import type { Condition } from "../condition";
import type { Criterion } from "../criterion";

export const commonPractice = "Common practice.";
export const practiceChoice = "The practice's own choice.";

/** Kinds of instrument and preparation that a motor drives. */
export const powered = ["oscillating", "rotary", "reciprocating"] as const;
export const isPowered: Condition = { field: "preparation", among: powered };
export const isFilled: Condition = { field: "filled", is: true };

export const hypochlorite: Condition = { field: "irrigant", is: "naocl" };
export const chlorhexidine: Condition = { field: "irrigant", is: "chx" };

export const primaryTooth = {
  reason: "primary-tooth",
  inWords: "primary teeth",
  when: { field: "dentition", is: "primary" },
} as const;

/** An apex that nobody wrote down as open is taken as closed. */
export const openApex = {
  reason: "open-apex",
  inWords: "canals with an open apex",
  when: { known: { field: "apex", is: "open" } },
} as const;

/** What most criteria of canals, and of visits, have in common. */
export const ofCanals = {
  unit: "canal",
  treatmentPopulation: true,
  population: { all: [] },
  exclusions: [],
  source: commonPractice,
  targetSource: practiceChoice,
  completenessFloor: 0.9,
  byClinician: true,
} as const satisfies Partial<Criterion>;

export const ofVisits = { ...ofCanals, unit: "visit", treatmentPopulation: false } as const;
