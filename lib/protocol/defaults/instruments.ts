import type { Condition } from "../condition";
import type { Criterion } from "../criterion";
import { commonPractice, ofCanals, powered } from "./common";

const ofUses = { ...ofCanals, unit: "use", treatmentPopulation: false } as const;

/** Limits that are set for each kind of instrument by itself; null until the practice sets them. */
const limitsOf = (kind: string): Condition => ({
  all: [
    { field: "kind", is: kind },
    { field: "speed_per_min", atMost: null },
    { field: "torque_n_cm", atMost: null },
  ],
});

/** Settings, number of uses, tracing, and what is due when an instrument separates. */
export const instruments: readonly Criterion[] = [
  {
    ...ofUses,
    id: "speed-torque",
    title: "Speed and torque inside the set limits",
    statement: "Speed and torque were set within the practice's limits for the kind of instrument.",
    rationale: "Instruments separate sooner when they are driven beyond what they are made for.",
    population: { field: "kind", among: powered },
    met: { any: powered.map(limitsOf) },
    exceptions: { steps: [], reasons: ["equipment-failure"] },
    target: 0.95,
  },
  {
    ...ofUses,
    id: "use-limit",
    title: "Use limit",
    statement:
      "The instrument was used for no more patients than the practice's limit, and once where it is for single use.",
    rationale: "Metal tires with every use. The number is from memory; the maker's goes first.",
    met: {
      all: [
        { field: "use_number", atMost: 4 },
        {
          any: [
            { field: "single_use", is: false },
            { field: "use_number", atMost: 1 },
          ],
        },
      ],
    },
    exceptions: { steps: [], reasons: [] },
    target: 1,
  },
  {
    ...ofUses,
    id: "traceable",
    title: "Traceable instruments",
    statement: "The lot is written down, and the steriliser cycle where the instrument is reused.",
    rationale: "When a lot or a cycle fails, it must be known whom it reached.",
    met: {
      all: [
        { recorded: "lot" },
        {
          any: [
            { recorded: "steriliser_cycle" },
            { known: { field: "use_number", atMost: 1 } },
            { known: { field: "single_use", is: true } },
          ],
        },
      ],
    },
    exceptions: null,
    target: 0.98,
    completenessFloor: null,
  },
  {
    ...ofUses,
    id: "separation-managed",
    title: "Separation fully managed",
    statement:
      "Third, fragment and management are written down, the patient was told, and nothing was pending after 90 days.",
    rationale: "What is hard to defend is not recognising it and not telling the patient.",
    unit: "separation",
    met: {
      all: [
        { field: "third", among: ["coronal", "middle", "apical", "beyond"] },
        { field: "fragment_mm", atLeast: 0 },
        {
          field: "management",
          among: ["retrieved", "bypassed", "retained", "referred", "pending"],
        },
        { field: "patient_told", is: true },
        { field: "open_days", atMost: 90 },
      ],
    },
    exceptions: null,
    target: 1,
    targetSource: commonPractice,
  },
];
