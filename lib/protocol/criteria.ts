import type { Criterion } from "./criterion";

const practiceChoice = "The practice's own choice.";
const treatmentCanals =
  "Canals of visits that were completed or are continuing, in first treatment or retreatment, that were prepared.";

/** The criteria in force, in page order. */
export const criteria: readonly Criterion[] = [
  {
    id: "isolation",
    title: "Isolation by rubber dam",
    statement: "The tooth was isolated by rubber dam.",
    rationale:
      "The dam keeps saliva out of the canal, and irrigant and instruments out of the patient.",
    source: "Common practice.",
    unit: "visit",
    treatmentPopulation: false,
    populationInWords: "Every visit.",
    exclusions: [
      {
        reason: "abandoned",
        inWords: "visits that were abandoned",
        when: { field: "outcome", is: "abandoned" },
      },
      {
        reason: "not-applicable",
        inWords: "visits where the dam was not applicable",
        when: { field: "dam", is: "not-applicable" },
      },
    ],
    met: { field: "dam", is: "done" },
    evidence: { recorded: "dam" },
    exception: "exception",
    target: 1,
    targetSource: "Common practice.",
    completenessFloor: 0.9,
    byClinician: true,
  },
  {
    id: "length-recorded",
    title: "Working length recorded",
    statement: "The canal's working length and how it was found are written down.",
    rationale: "Without a length nobody can say how far the canal was prepared.",
    source: "Common practice.",
    unit: "canal",
    treatmentPopulation: true,
    populationInWords: treatmentCanals,
    exclusions: [],
    met: { all: [{ recorded: "working_length_mm" }, { recorded: "length_method" }] },
    // About recording itself: what is not there is not met.
    evidence: { all: [] },
    exception: null,
    target: 0.95,
    targetSource: practiceChoice,
    completenessFloor: null,
    byClinician: true,
  },
  {
    id: "timer-reset",
    title: "Timer reset for the canal",
    statement: "The irrigation timer was started afresh for the canal.",
    rationale: "A timer that runs on counts earlier canals as well.",
    source: "Common practice.",
    unit: "canal",
    treatmentPopulation: true,
    populationInWords: treatmentCanals,
    exclusions: [
      {
        reason: "no-timer",
        inWords: "canals treated without a timer",
        when: { field: "timer_reset", is: "no-timer" },
      },
    ],
    met: { field: "timer_reset", is: "yes" },
    evidence: { recorded: "timer_reset" },
    exception: "exception",
    target: 0.95,
    targetSource: practiceChoice,
    completenessFloor: 0.9,
    byClinician: true,
  },
  {
    id: "line-rinse",
    title: "Irrigation line rinsed",
    statement: "The irrigation line was rinsed for 30 seconds or longer on the day.",
    rationale: "Dried salts block the line. Rinsing is upkeep, not decontamination.",
    source: "Common practice.",
    unit: "chair-day",
    treatmentPopulation: false,
    populationInWords:
      "Chairs and days on which a visit with continuous delivery started in the chair.",
    exclusions: [
      {
        reason: "out-of-service",
        inWords: "days out of service",
        when: { field: "status", is: "out-of-service" },
      },
    ],
    met: {
      all: [
        { field: "status", is: "done" },
        { field: "duration_s", atLeast: 30 },
      ],
    },
    evidence: {
      any: [
        { all: [{ field: "status", is: "done" }, { recorded: "duration_s" }] },
        { field: "status", is: "not-done" },
      ],
    },
    exception: null,
    target: 0.95,
    targetSource: practiceChoice,
    completenessFloor: 0.9,
    byClinician: false,
  },
];

/** A criterion's id as a measure's. */
export function criterionMeasure(criterion: Criterion): string {
  return `criterion/${criterion.id}`;
}

/** The criterion that a measure's id names, or undefined where it names none. */
export function criterionOf(measure: string): Criterion | undefined {
  return criteria.find((criterion) => criterionMeasure(criterion) === measure);
}
