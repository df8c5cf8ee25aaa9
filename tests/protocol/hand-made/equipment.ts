import { visit } from "../../plain/hand-made";
import { canal, exception, type HandMadeCase, step, wholeTooth } from "./hand-made-case";

// Worked by hand from the definitions; beside each row stands what it comes to.

const visits = ["V-1", "V-2", "V-3", "V-4", "V-5", "V-6", "V-7"];
const sessions = visits.map((id) => visit(id));
const prepared = visits.map((session_id) => canal("main", { session_id }));

/** V-1 done, V-2 not done, V-3 not applicable, V-4 excepted, V-5 nothing, V-6 excused, V-7 of a canal only. */
const steps = (name: string) => [
  step(name, "done"),
  step(name, "not-done", { session_id: "V-2" }),
  step(name, "not-applicable", { session_id: "V-3" }),
  step(name, "excepted", { session_id: "V-4", reason: "equipment-failure" }),
  step(name, "not-done", { session_id: "V-6" }),
  step(name, "done", { session_id: "V-7", canal: "main" }),
];
const outcomes = {
  "V-1": "met",
  "V-2": "not met",
  "V-4": "excepted: equipment-failure",
  "V-5": "not recorded",
  "V-6": "excepted: other",
  "V-7": "not recorded",
};
const continuous = (session_id: string) =>
  wholeTooth(1, "naocl", { session_id, canal: "main", delivery: "continuous" });

/** The line, the torque and the handpiece, by visit; they are no one clinician's. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "the line before a file that carries irrigant; there, not applicable is no answer",
    criterion: "line-check",
    records: {
      sessions: [...sessions, visit("V-8"), visit("V-9", { outcome: "abandoned" })],
      canals: [...prepared, canal("main", { session_id: "V-8" })],
      irrigation: [
        ...visits.map(continuous),
        wholeTooth(1, "naocl", { session_id: "V-8", canal: "main" }), // by syringe
        wholeTooth(1, "naocl", { session_id: "V-9", delivery: "continuous" }), // for the whole tooth
      ],
      steps: [...steps("line-check"), step("line-check", "done", { session_id: "V-9" })],
      exceptions: [exception("line-check", "other", { session_id: "V-6" })],
    },
    outcomes: { ...outcomes, "V-3": "not met", "V-8": "not counted", "V-9": "met" },
    clinicians: { "V-1": [] },
  },
  {
    says: "the torque, where it applies",
    criterion: "torque-calibration",
    records: {
      sessions,
      canals: prepared,
      steps: steps("torque-calibration"),
      exceptions: [exception("torque-calibration", "other", { session_id: "V-6" })],
    },
    outcomes: { ...outcomes, "V-3": "excluded: not-applicable" },
    clinicians: { "V-1": [] },
  },
  {
    says: "the handpiece; not applicable is no answer",
    criterion: "handpiece-care",
    records: {
      sessions,
      canals: prepared,
      steps: steps("handpiece-care"),
      exceptions: [exception("handpiece-care", "other", { session_id: "V-6" })],
    },
    outcomes: { ...outcomes, "V-3": "not met" },
    clinicians: { "V-1": [] },
  },
  ...["torque-calibration", "handpiece-care"].map((criterion) => ({
    says: "a motor was used where a canal was prepared with it, or an instrument of such a kind used",
    criterion,
    records: {
      sessions: ["V-1", "V-2", "V-3", "V-4", "V-5"].map((id) => visit(id, { treatment: "other" })),
      canals: [
        canal("MB", { preparation: "oscillating" }),
        canal("main", { session_id: "V-2", preparation: "none" }), // but an instrument
        canal("main", { session_id: "V-3", preparation: "hand" }),
        canal("main", { session_id: "V-4", preparation: "none" }),
        // V-5: no canal.
      ],
      instruments: [
        { session_id: "V-2", canal: "main", seq: 1, kind: "reciprocating" },
        { session_id: "V-3", canal: "main", seq: 1, kind: "hand" },
      ],
      steps: [step(criterion, "done")],
    },
    outcomes: {
      "V-1": "met",
      "V-2": "not recorded",
      "V-3": "not counted",
      "V-4": "not counted",
      "V-5": "not counted",
    },
  })),
];
