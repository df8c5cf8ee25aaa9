import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definitions; beside each row stands what it comes to. Courses over visits are in courses.ts.

const sessions = [visit("V-1")];
const filled = (name: string) => canal(name, { filled: true });
const edta = (name: string, concentration_pct: number, duration_s: number, dwell_s: number) =>
  delivery(name, 1, "edta", { concentration_pct, duration_s, dwell_s });

/** EDTA, and the rinse after it. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "EDTA of 15 to 17 % flowed or stood for 60 s or more",
    criterion: "chelator",
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL", "MM", "P"].map(filled),
      irrigation: [
        edta("MB1", 17, 30, 30),
        edta("MB2", 15, 0, 60),
        edta("ML", 17, 29, 30), // 59 s
        edta("D", 18, 60, 60), // too strong: 0 s
        edta("DB", 14, 60, 60), // too weak: 0 s
        delivery("DL", 1, "citric-acid", { duration_s: 120, dwell_s: 120 }), // no EDTA: 0 s
        delivery("MM", 1, "naocl", { volume_ml: 20 }), // no EDTA: 0 s
        delivery("P", 1, "edta", {
          ...{ concentration_pct: 17, volume_ml: 2, flow_ml_min: 4 }, // 2 ÷ 4 min = 30 s
          dwell_s: 30,
        }),
      ],
      exceptions: [exception("chelator", "alternative", { canal: "DL" })],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "met",
      "V-1/ML": "not met",
      "V-1/D": "not met",
      "V-1/DB": "not met",
      "V-1/DL": "excepted: alternative",
      "V-1/MM": "not met",
      "V-1/P": "met",
    },
  },
  {
    says: "what is missing leaves open only what it could change",
    criterion: "chelator",
    records: {
      sessions,
      canals: [
        ...["MB1", "MB2", "ML", "D", "DB"].map(filled),
        canal("DL", { filled: true, timer_reset: "no" }),
        canal("MM"), // filled or not: not written down
        canal("P", { filled: false }),
      ],
      irrigation: [
        delivery("MB1", 1, "edta", { concentration_pct: 17, duration_s: 60 }), // 60 s are there
        delivery("MB2", 1, "edta", { concentration_pct: 17, duration_s: 30 }), // how long it stood is not
        delivery("ML", 1, "edta", { duration_s: 60, dwell_s: 60 }), // of unknown strength
        delivery("D", 1, "edta", { concentration_pct: 18 }), // too strong, for however long
        // DB: nothing is written down.
        // DL: off a timer that ran on, so that only 30 s of dwell are known.
        delivery("DL", 1, "edta", {
          ...{ concentration_pct: 17, duration_s: 60, dwell_s: 30, basis: "timer" },
        }),
        edta("MM", 17, 60, 60),
        edta("P", 17, 60, 60),
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not recorded",
      "V-1/ML": "not recorded",
      "V-1/D": "not met",
      "V-1/DB": "not recorded",
      "V-1/DL": "not recorded",
      "V-1/MM": "not recorded",
      "V-1/P": "not counted",
    },
  },
  {
    says: "EDTA noted for the whole tooth may have stood in each canal for long enough",
    criterion: "chelator",
    records: {
      sessions: [visit("V-1"), visit("V-2")],
      canals: [filled("MB"), filled("ML"), canal("main", { session_id: "V-2", filled: true })],
      irrigation: [
        edta("MB", 17, 30, 0),
        edta("ML", 17, 30, 30), // 60 s of its own
        wholeTooth(1, "edta", { concentration_pct: 17, dwell_s: 60 }),
        delivery("main", 1, "naocl", { session_id: "V-2" }),
        wholeTooth(1, "edta", { session_id: "V-2", concentration_pct: 18 }), // too strong anyway
      ],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met", "V-2/main": "not met" },
  },
  {
    says: "after the last chelator comes saline, water or hypochlorite, by seq and not by row",
    criterion: "rinse-after-chelator",
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL", "MM", "P"].map(filled),
      irrigation: [
        delivery("MB1", 2, "naocl"),
        delivery("MB1", 1, "edta"), // first by seq: the hypochlorite came after it
        delivery("MB2", 1, "naocl"),
        delivery("MB2", 2, "edta"), // nothing after it
        delivery("ML", 1, "edta"),
        delivery("ML", 2, "saline"),
        delivery("ML", 3, "edta"), // nothing after the last
        delivery("D", 1, "citric-acid"),
        delivery("D", 2, "other"),
        delivery("D", 3, "water"), // sooner or later
        delivery("DB", 1, "hedp"),
        delivery("DB", 2, "chx"), // chlorhexidine is no such rinse
        delivery("DL", 1, "edta"), // excused below
        delivery("MM", 1, "naocl"), // no chelator
        // P: nothing is written down, so no chelator is known.
      ],
      exceptions: [exception("rinse-after-chelator", "not-possible", { canal: "DL" })],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not met",
      "V-1/ML": "not met",
      "V-1/D": "met",
      "V-1/DB": "not met",
      "V-1/DL": "excepted: not-possible",
      "V-1/MM": "not counted",
      "V-1/P": "not counted",
    },
  },
  {
    says: "only canals that were filled; a held delivery may have been the rinse",
    criterion: "rinse-after-chelator",
    records: {
      sessions,
      canals: [canal("MB", { filled: false }), canal("ML"), filled("D"), filled("DB")],
      irrigation: [
        delivery("MB", 1, "edta"),
        delivery("ML", 1, "edta"),
        delivery("ML", 2, "saline"),
        delivery("D", 1, "edta"),
        delivery("DB", 1, "naocl"),
      ],
      held: [held("irrigation", { canal: "D" }), held("irrigation", { canal: "DB" })],
    },
    outcomes: {
      "V-1/MB": "not counted",
      "V-1/ML": "not recorded",
      "V-1/D": "not recorded",
      "V-1/DB": "not counted",
    },
  },
  {
    says: "nobody knows when what is noted for the whole tooth was delivered",
    criterion: "rinse-after-chelator",
    records: {
      sessions: [visit("V-1"), visit("V-2"), visit("V-3")],
      canals: [
        filled("MB"), // its EDTA may have been followed by the saline
        filled("ML"), // no chelator, own or noted
        canal("main", { session_id: "V-2", filled: true }), // the EDTA of the note may have come last
        canal("main", { session_id: "V-3", filled: true }), // chlorhexidine would rinse nothing away
      ],
      irrigation: [
        delivery("MB", 1, "edta"),
        delivery("ML", 1, "naocl"),
        wholeTooth(1, "saline"),
        delivery("main", 1, "naocl", { session_id: "V-2" }),
        wholeTooth(1, "edta", { session_id: "V-2" }),
        delivery("main", 1, "edta", { session_id: "V-3" }),
        wholeTooth(1, "chx", { session_id: "V-3" }),
      ],
    },
    outcomes: {
      "V-1/MB": "not recorded",
      "V-1/ML": "not counted",
      "V-2/main": "not recorded",
      "V-3/main": "not met",
    },
  },
];
