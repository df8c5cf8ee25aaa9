import type { Condition } from "../condition";
import type { Criterion } from "../criterion";
import {
  chlorhexidine,
  commonPractice,
  hypochlorite,
  isFilled,
  ofCanals,
  ofVisits,
  openApex,
  primaryTooth,
} from "./common";

const bySyringe: Condition = { field: "delivery", is: "syringe" };
const chelator: Condition = { field: "irrigant", among: ["edta", "citric-acid", "hedp"] };

/** What was brought into the canals, how much of it and in which order. */
export const irrigation: readonly Criterion[] = [
  {
    ...ofCanals,
    id: "main-irrigant",
    title: "Hypochlorite as the main irrigant, in the band",
    statement:
      "Most of the irrigant, by known volume, was hypochlorite, and all hypochlorite lay within 0.5 to 6 %.",
    rationale: "Hypochlorite is what dissolves tissue; there is no consensus on its strength.",
    met: {
      all: [
        { field: "main_irrigant", is: "naocl" },
        {
          every: "deliveries",
          that: hypochlorite,
          are: {
            all: [
              { field: "concentration_pct", atLeast: 0.5 },
              { field: "concentration_pct", atMost: 6 },
            ],
          },
        },
      ],
    },
    exceptions: { steps: [], reasons: ["allergy"] },
    target: 0.95,
  },
  {
    ...ofCanals,
    id: "hypochlorite-floor",
    title: "Hypochlorite volume at or over the floor",
    statement: "Over the whole course the canal was irrigated with 10 mL of hypochlorite or more.",
    rationale: "What is replaced acts; what stands is used up. The floor is a rule of thumb.",
    population: isFilled,
    exclusions: [primaryTooth, openApex],
    met: { total: ["volume_ml"], of: "course", that: hypochlorite, atLeast: 10 },
    exceptions: { steps: [], reasons: ["allergy", "not-tolerated"] },
    target: 0.8,
    wholeCourse: true,
  },
  {
    ...ofCanals,
    id: "chelator",
    title: "Chelator",
    statement:
      "Over the whole course EDTA of 15 to 17 % flowed or stood in the canal for 60 s or more.",
    rationale: "A chelator takes away the smear layer that cutting leaves.",
    population: isFilled,
    exclusions: [primaryTooth, openApex],
    met: {
      total: ["duration_s", "dwell_s"],
      of: "course",
      that: {
        all: [
          { field: "irrigant", is: "edta" },
          { field: "concentration_pct", atLeast: 15 },
          { field: "concentration_pct", atMost: 17 },
        ],
      },
      atLeast: 60,
    },
    exceptions: { steps: [], reasons: ["alternative"] },
    target: 0.9,
    wholeCourse: true,
  },
  {
    ...ofCanals,
    id: "rinse-after-chelator",
    title: "A rinse after the chelator",
    statement: "After the last chelator the canal was rinsed with saline, water or hypochlorite.",
    rationale: "A chelator left in the canal goes on acting on the dentine.",
    population: { all: [isFilled, { known: { some: "deliveries", that: chelator } }] },
    met: {
      after: "deliveries",
      each: chelator,
      comes: { field: "irrigant", among: ["saline", "water", "naocl"] },
    },
    exceptions: { steps: [], reasons: [] },
    target: 0.9,
  },
  {
    ...ofVisits,
    id: "no-hypochlorite-chlorhexidine-contact",
    title: "No hypochlorite next to chlorhexidine",
    statement:
      "Wherever hypochlorite and chlorhexidine followed each other, saline or water came in between.",
    rationale: "Hypochlorite and chlorhexidine form a precipitate where they meet.",
    source: "Basrani and others 2007 (PubMed 17878084), read for the project's notes.",
    population: {
      known: {
        all: [
          { some: "deliveries", that: hypochlorite },
          { some: "deliveries", that: chlorhexidine },
        ],
      },
    },
    met: {
      between: "deliveries",
      one: hypochlorite,
      other: chlorhexidine,
      lies: { field: "irrigant", among: ["saline", "water"] },
    },
    exceptions: null,
    target: 1,
    targetSource: commonPractice,
  },
  {
    ...ofCanals,
    id: "tip-depth",
    title: "Depth of the irrigating tip",
    statement: "The deepest syringe tip stayed 1 to 3 mm short of the working length.",
    rationale:
      "Too deep, and irrigant is driven beyond the apex; too shallow, and it does not get there.",
    population: { known: { some: "deliveries", that: bySyringe } },
    met: {
      all: [
        { every: "deliveries", that: bySyringe, are: { field: "tip_short_mm", atLeast: 1 } },
        { some: "deliveries", that: { all: [bySyringe, { field: "tip_short_mm", atMost: 3 }] } },
      ],
    },
    exceptions: { steps: [], reasons: ["calcified"] },
    target: 0.9,
  },
  {
    ...ofCanals,
    id: "flow-limit",
    title: "Flow within the practice's limit",
    statement: "The irrigant flowed no faster than the practice's limit.",
    rationale: "The faster the flow, the higher the pressure at the apex.",
    unit: "delivery",
    treatmentPopulation: false,
    met: { field: "flow_ml_min", atMost: null },
    exceptions: { steps: [], reasons: [] },
    target: 0.95,
  },
  {
    ...ofCanals,
    id: "activation",
    title: "Activation of the irrigant",
    statement: "Hypochlorite and EDTA together were activated for 60 s or more.",
    rationale: "Activation carries irrigant where flow alone does not.",
    population: isFilled,
    met: {
      total: ["activation_s"],
      of: "deliveries",
      that: { field: "irrigant", among: ["naocl", "edta"] },
      atLeast: 60,
    },
    exceptions: { steps: [], reasons: ["equipment-failure"] },
    target: 0.8,
  },
  {
    ...ofCanals,
    id: "timer-reset",
    title: "Timer reset for the canal",
    statement: "The irrigation timer was started afresh for the canal.",
    rationale: "A timer that runs on counts earlier canals as well.",
    exclusions: [
      {
        reason: "no-timer",
        inWords: "canals treated without a timer",
        when: { field: "timer_reset", is: "no-timer" },
      },
    ],
    met: { field: "timer_reset", is: "yes" },
    exceptions: { steps: [], reasons: ["equipment-failure"] },
    target: 0.95,
  },
];
