import type { Condition } from "../condition";
import type { Criterion } from "../criterion";
import { commonPractice, ofVisits } from "./common";

/** What staff and equipment do together: shown by chair and practice, not by clinician. */
const together = { ...ofVisits, byClinician: false } as const;
const isPoweredVisit: Condition = { field: "powered", is: true };
const inService: Condition = { not: { field: "status", is: "out-of-service" } };
const outOfService = (task: string) => ({
  reason: "out-of-service",
  inWords: "days out of service",
  when: {
    every: `upkeep/${task}`,
    that: { all: [] },
    are: { field: "status", is: "out-of-service" },
  },
});

/** The line, the motor and the handpiece, and the record itself. */
export const equipment: readonly Criterion[] = [
  {
    ...together,
    id: "line-check",
    title: "Irrigation line checked",
    statement: "The irrigation line was checked before a file that carries irrigant was started.",
    rationale: "A blocked line lets the file cut dry.",
    population: { field: "continuous", is: true },
    met: { field: "step/line-check", is: "done" },
    exceptions: { steps: ["line-check"], reasons: ["equipment-failure"] },
    target: 1,
  },
  {
    ...together,
    id: "torque-calibration",
    title: "Torque calibrated",
    statement: "The torque setting was checked for the handpiece in use.",
    rationale: "A torque that is not what the display says lets instruments lock and separate.",
    population: isPoweredVisit,
    exclusions: [
      {
        reason: "not-applicable",
        inWords: "visits where calibration was not applicable",
        when: { field: "step/torque-calibration", is: "not-applicable" },
      },
    ],
    met: { field: "step/torque-calibration", is: "done" },
    exceptions: { steps: ["torque-calibration"], reasons: ["equipment-failure"] },
    target: 0.95,
  },
  {
    ...together,
    id: "handpiece-care",
    title: "Handpiece cared for",
    statement: "The handpiece was cleaned and oiled after treatment.",
    rationale: "Hypochlorite attacks metal. This is upkeep, not decontamination.",
    population: isPoweredVisit,
    met: { field: "step/handpiece-care", is: "done" },
    exceptions: { steps: ["handpiece-care"], reasons: ["equipment-failure"] },
    target: 0.95,
  },
  {
    ...together,
    id: "line-rinse",
    title: "Irrigation line rinsed",
    statement: "The irrigation line was rinsed for 30 seconds or longer on the day.",
    rationale: "Dried salts block the line. Rinsing is upkeep, not decontamination.",
    unit: "chair-day",
    exclusions: [outOfService("line-rinse")],
    met: {
      every: "upkeep/line-rinse",
      that: inService,
      are: {
        all: [
          { field: "status", is: "done" },
          { field: "duration_s", atLeast: 30 },
        ],
      },
    },
    exceptions: null,
    target: 0.95,
  },
  {
    ...together,
    id: "line-dry",
    title: "Irrigation line dried",
    statement: "The irrigation line was emptied when the chair closed.",
    rationale: "What stays in the line dries and blocks it.",
    unit: "chair-day",
    exclusions: [outOfService("line-dry")],
    met: { every: "upkeep/line-dry", that: inService, are: { field: "status", is: "done" } },
    exceptions: null,
    target: 0.95,
  },
  {
    ...ofVisits,
    id: "record-complete",
    title: "Record complete",
    statement:
      "Everything that the protocol takes as evidence is recorded, and no row of the visit is held.",
    rationale:
      "What is not written down can neither be shown nor be learnt from: read this one before the rest.",
    source: commonPractice,
    met: {
      all: [{ field: "held_rows", atMost: 0 }, { not: { some: "gaps", that: { all: [] } } }],
    },
    exceptions: null,
    target: 0.95,
    completenessFloor: null,
  },
];
