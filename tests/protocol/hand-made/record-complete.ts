import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import type { Records } from "../../plain/records";
import {
  canal,
  delivery,
  exception,
  type HandMadeCase,
  held,
  step,
  wholeTooth,
} from "./hand-made-case";

// Worked by hand: from a visit of which all is written down, one thing at a time is taken away or added. The criteria
// that are in force from the start take the evidence; flow, activation, speed and torque are not asked for.

/** A rotary preparation of one canal, filled, with everything that the criteria in force ask for. */
const whole = {
  sessions: [visit("V-1")],
  canals: [
    canal("MB", {
      working_length_mm: 20,
      length_method: "locator",
      timer_reset: "yes",
      filled: true,
    }),
  ],
  irrigation: [
    delivery("MB", 1, "naocl", {
      ...{ concentration_pct: 3, volume_ml: 5, duration_s: 60, dwell_s: 0, tip_short_mm: 2 },
    }),
  ],
  instruments: [
    {
      ...{ session_id: "V-1", canal: "MB", seq: 1, kind: "rotary", separated: 0 },
      ...{ lot: "L-1", steriliser_cycle: "A-1", use_number: 2, single_use: false },
    },
  ],
  steps: [
    step("dam", "done"),
    step("patency", "done"),
    step("torque-calibration", "done"),
    step("handpiece-care", "done"),
  ],
} satisfies Partial<Records>;

function complete(says: string, outcome: string, others: Partial<Records> = {}): HandMadeCase {
  return {
    says,
    criterion: "record-complete",
    records: { ...whole, ...others },
    outcomes: { "V-1": outcome },
  };
}

/** The first row of a table with other values, or without some. */
function changed(row: Values | undefined, others: Values): Values[] {
  const entries = Object.entries({ ...row, ...others });
  return [Object.fromEntries(entries.filter(([, value]) => value !== undefined))];
}
const canals = (others: Values) => ({ canals: changed(whole.canals[0], others) });
const irrigation = (others: Values) => ({ irrigation: changed(whole.irrigation[0], others) });
const instruments = (others: Values) => ({ instruments: changed(whole.instruments[0], others) });
const steps = (name: string, ...others: Values[]) => ({
  steps: [...whole.steps.filter((row) => row.step !== name), ...others],
});

/** Records that are complete, and what is missing from those that are not. */
export const cases: readonly HandMadeCase[] = [
  complete("all is written down", "met"),
  complete("that something was not done is written down too", "met", {
    ...steps("dam", step("dam", "not-done")),
  }),
  complete("no dam step", "not met", steps("dam")),
  complete("no dam step, but a coded reason", "met", {
    ...steps("dam"),
    exceptions: [exception("isolation", "not-possible")],
  }),
  complete("not applicable is left out", "met", steps("dam", step("dam", "not-applicable"))),
  complete("no working length: not met there, a gap here", "not met", {
    ...canals({ working_length_mm: undefined }),
  }),
  complete("not how the length was found", "not met", canals({ length_method: undefined })),
  complete("neither patency nor a glide path", "not met", steps("patency")),
  complete("not how strong the hypochlorite was", "not met", {
    ...irrigation({ concentration_pct: undefined }),
  }),
  complete("not how much hypochlorite there was", "not met", irrigation({ volume_ml: undefined })),
  complete("not whether the canal was filled", "not met", canals({ filled: undefined })),
  complete("no EDTA is an answer, and EDTA of unknown strength is none", "not met", {
    irrigation: [
      ...whole.irrigation,
      delivery("MB", 2, "edta", { tip_short_mm: 2, dwell_s: 60, duration_s: 0, volume_ml: 1 }),
      delivery("MB", 3, "saline", { tip_short_mm: 2 }),
    ],
  }),
  complete("not how deep the tip was", "not met", irrigation({ tip_short_mm: undefined })),
  complete("not whether the timer was reset", "not met", canals({ timer_reset: undefined })),
  complete("no activation, which nobody asks for", "met", irrigation({ activation: undefined })),
  complete("no lot: not met there, a gap here", "not met", instruments({ lot: undefined })),
  complete("not which use it was", "not met", instruments({ use_number: undefined })),
  complete("a separation without its third", "not met", {
    ...instruments({ separated: 1, fragment_mm: 3, management: "retained", patient_told: true }),
  }),
  complete("a separation with all that is due", "met", {
    ...instruments({
      ...{ separated: 1, third: "apical", fragment_mm: 3 },
      ...{ management: "retained", patient_told: true },
    }),
  }),
  complete("no torque calibration", "not met", steps("torque-calibration")),
  complete("no handpiece care", "not met", steps("handpiece-care")),
  complete("a continuous delivery without a check of the line", "not met", {
    ...irrigation({ delivery: "continuous" }),
  }),
  complete("the chair's rinse is the chair's record, not the visit's", "met", {
    ...irrigation({ delivery: "continuous" }),
    steps: [...whole.steps, step("line-check", "done")],
  }),
  complete("chlorhexidine noted for the whole tooth, nobody knows when", "not met", {
    irrigation: [...whole.irrigation, wholeTooth(1, "chx", { delivery: "negative-pressure" })],
  }),
  complete("a held row of any table", "not met", { held: [held("steps")] }),
  complete("a held row of a canal that the visit does not have", "not met", {
    held: [held("instruments", { canal: "P", practice: "NORTH" })],
  }),
  complete("a held row of another practice's visit of that number", "met", {
    held: [held("steps", { practice: "SOUTH" })],
  }),
  complete("an emergency without anything but the dam: its canal is left out", "met", {
    sessions: [visit("V-1", { treatment: "emergency" })],
    canals: [canal("MB", { preparation: "hand" })],
    irrigation: [],
    instruments: [],
    steps: [step("dam", "done")],
  }),
  {
    says: "the unit is its visit's: what a course lacks is a gap where the canal was filled",
    criterion: "record-complete",
    records: {
      ...whole,
      sessions: [
        visit("V-1", { started_at: "2024-08-14T09:00:00.000Z" }),
        visit("V-0", { started_at: "2024-08-01T09:00:00.000Z", treatment: "emergency" }),
      ],
      canals: [
        ...whole.canals,
        canal("MB", { session_id: "V-0", preparation: "hand", filled: false }),
      ],
      // V-0 lacks a volume: its canal is left out there, but the 10 mL of the course cannot be told.
      irrigation: [
        ...whole.irrigation,
        delivery("MB", 1, "naocl", { session_id: "V-0", delivery: "negative-pressure" }),
      ],
      steps: [...whole.steps, step("dam", "done", { session_id: "V-0" })],
    },
    outcomes: { "V-1": "not met", "V-0": "met" },
  },
];
