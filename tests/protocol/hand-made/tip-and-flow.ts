import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definitions, flow with a limit of 8 mL/min; beside each row stands what it comes to.

const sessions = [visit("V-1")];
const tip = (name: string, seq: number, tip_short_mm: number) =>
  delivery(name, seq, "naocl", { tip_short_mm });

/** Depth of the tip, flow, and the timer. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "the deepest syringe tip stayed 1 to 3 mm short",
    criterion: "tip-depth",
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL", "MM"].map((name) => canal(name)),
      irrigation: [
        tip("MB1", 1, 1),
        tip("MB2", 1, 3),
        tip("ML", 1, 2),
        tip("ML", 2, 8), // the deepest is at 2
        tip("D", 1, 0.5), // too deep
        tip("D", 2, 2),
        tip("DB", 1, 3.5), // too shallow
        delivery("DL", 1, "naocl", { delivery: "negative-pressure", tip_short_mm: 0 }), // no syringe
        tip("MM", 1, 2),
        delivery("MM", 2, "naocl", { delivery: "negative-pressure", tip_short_mm: 0 }), // not asked of it
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "met",
      "V-1/ML": "met",
      "V-1/D": "not met",
      "V-1/DB": "not met",
      "V-1/DL": "not counted",
      "V-1/MM": "met",
    },
  },
  {
    says: "a depth that is not recorded may be any",
    criterion: "tip-depth",
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL"].map((name) => canal(name)),
      irrigation: [
        delivery("MB1", 1, "naocl"),
        tip("MB2", 1, 2),
        delivery("MB2", 2, "naocl"), // it may have been deeper than 1
        tip("ML", 1, 0),
        delivery("ML", 2, "naocl"), // the first was too deep, whatever this was
        tip("D", 1, 5),
        delivery("D", 2, "naocl"), // it may have been deep enough
        tip("DB", 1, 5), // excused below
        tip("DL", 1, 2), // and a held one below
      ],
      exceptions: [exception("tip-depth", "calcified", { canal: "DB" })],
      held: [held("irrigation", { canal: "DL" })],
    },
    outcomes: {
      "V-1/MB1": "not recorded",
      "V-1/MB2": "not recorded",
      "V-1/ML": "not met",
      "V-1/D": "not recorded",
      "V-1/DB": "excepted: calcified",
      "V-1/DL": "not recorded",
    },
  },
  {
    says: "a syringe noted for the whole tooth was in each canal, nobody knows how deep",
    criterion: "tip-depth",
    records: {
      sessions,
      canals: [canal("MB"), canal("ML"), canal("D")],
      irrigation: [tip("MB", 1, 2), tip("ML", 1, 0), wholeTooth(1, "naocl", { tip_short_mm: 2 })],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "not met", "V-1/D": "not recorded" },
  },
  {
    says: "that a held delivery was by syringe is not known",
    criterion: "tip-depth",
    records: {
      sessions,
      canals: [canal("MB"), canal("ML")],
      irrigation: [delivery("MB", 1, "naocl", { delivery: "continuous" })],
      held: [held("irrigation", { canal: "MB" })],
    },
    outcomes: { "V-1/MB": "not counted", "V-1/ML": "not counted" },
  },
  {
    says: "flow of every delivery of every visit, as recorded or by volume and time",
    criterion: "flow-limit",
    records: {
      sessions: [visit("V-1", { treatment: "emergency", outcome: "abandoned" })],
      canals: [canal("MB", { preparation: "none" }), canal("ML", { timer_reset: "no" })],
      irrigation: [
        delivery("MB", 1, "naocl", { flow_ml_min: 8 }),
        delivery("MB", 2, "saline", { flow_ml_min: 8.5 }),
        delivery("MB", 3, "naocl", { volume_ml: 4, duration_s: 30 }), // 8 mL/min
        delivery("MB", 4, "naocl", { volume_ml: 5, duration_s: 30 }), // 10 mL/min
        delivery("MB", 5, "naocl", { volume_ml: 5 }), // in what time?
        delivery("MB", 6, "naocl", { volume_ml: 5, duration_s: 0 }), // in no time: nothing to divide by
        delivery("ML", 1, "naocl", { volume_ml: 4, duration_s: 60, basis: "timer" }), // a timer that ran on
        delivery("ML", 2, "naocl", { flow_ml_min: 4, duration_s: 60, basis: "timer" }), // the flow itself is there
        delivery("ML", 3, "naocl", { volume_ml: 4, duration_s: 60, basis: "metered" }), // 4 mL/min
        wholeTooth(1, "naocl", { flow_ml_min: 6 }), // a unit of its own
        wholeTooth(2, "naocl", { volume_ml: 10, duration_s: 60 }), // 10 mL/min
        wholeTooth(3, "naocl"),
      ],
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "not met",
      "V-1/MB/3": "met",
      "V-1/MB/4": "not met",
      "V-1/MB/5": "not recorded",
      "V-1/MB/6": "not recorded",
      "V-1/ML/1": "not recorded",
      "V-1/ML/2": "met",
      "V-1/ML/3": "met",
      "V-1//1": "met",
      "V-1//2": "not met",
      "V-1//3": "not recorded",
    },
  },
  {
    says: "a canal's exception serves its deliveries, the visit's all others",
    criterion: "flow-limit",
    records: {
      sessions,
      canals: [canal("MB"), canal("ML")],
      irrigation: [
        delivery("MB", 1, "naocl", { flow_ml_min: 10 }),
        delivery("ML", 1, "naocl", { flow_ml_min: 10 }),
        delivery("ML", 2, "naocl", { flow_ml_min: 5 }),
        wholeTooth(1, "naocl"),
      ],
      exceptions: [
        exception("flow-limit", "not-possible", { canal: "MB" }),
        exception("flow-limit", "other"),
      ],
    },
    outcomes: {
      "V-1/MB/1": "excepted: not-possible",
      "V-1/ML/1": "excepted: other",
      "V-1/ML/2": "met",
      "V-1//1": "excepted: other",
    },
  },
  {
    says: "the timer started afresh for the canal",
    criterion: "timer-reset",
    records: {
      sessions,
      canals: [
        canal("MB1", { timer_reset: "yes" }),
        canal("MB2", { timer_reset: "no" }),
        canal("ML"),
        canal("D", { timer_reset: "no-timer" }),
        canal("DB", { timer_reset: "no" }),
        canal("DL"),
      ],
      exceptions: ["DB", "DL", "D", "MB1"].map((name) =>
        exception("timer-reset", "equipment-failure", { canal: name }),
      ),
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not met",
      "V-1/ML": "not recorded",
      "V-1/D": "excluded: no-timer",
      "V-1/DB": "excepted: equipment-failure",
      "V-1/DL": "excepted: equipment-failure", // a coded reason is evidence by itself
    },
  },
];
