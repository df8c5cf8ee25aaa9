import type * as r4 from "fhir/r4";

/** Codes of HL7's own systems, by system, with their displays in R4. */
const systems = {
  "measure-population": {
    "initial-population": "Initial Population",
    numerator: "Numerator",
    denominator: "Denominator",
    "denominator-exclusion": "Denominator Exclusion",
    "denominator-exception": "Denominator Exception",
    "measure-population": "Measure Population",
    "measure-population-exclusion": "Measure Population Exclusion",
    "measure-observation": "Measure Observation",
  },
  "measure-scoring": {
    proportion: "Proportion",
    "continuous-variable": "Continuous Variable",
    cohort: "Cohort",
  },
  "composite-measure-scoring": { opportunity: "Opportunity", "all-or-nothing": "All-or-nothing" },
  "measure-type": { process: "Process", outcome: "Outcome", composite: "Composite" },
  "measure-improvement-notation": {
    increase: "Increased score indicates improvement",
    decrease: "Decreased score indicates improvement",
  },
} as const;

type Systems = typeof systems;
export type PopulationCode = keyof Systems["measure-population"];

/** A code of one of HL7's systems as a concept. */
export function coded<S extends keyof Systems>(
  system: S,
  code: keyof Systems[S] & string,
): r4.CodeableConcept {
  const displays: Readonly<Record<string, string>> = systems[system];
  return {
    coding: [
      { system: `http://terminology.hl7.org/CodeSystem/${system}`, code, display: displays[code] },
    ],
  };
}
