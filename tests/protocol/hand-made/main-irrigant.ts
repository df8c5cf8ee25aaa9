import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definition; beside each row stands what it comes to.

const criterion = "main-irrigant";
const sessions = [visit("V-1")];
const three = { concentration_pct: 3 };

/** Hypochlorite as the main irrigant, 0.5 to 6 %. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "the irrigant of largest known volume must be hypochlorite",
    criterion,
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL", "MM"].map((name) => canal(name)),
      irrigation: [
        delivery("MB1", 1, "naocl", { ...three, volume_ml: 4 }), // with the next, 8 mL
        delivery("MB1", 2, "naocl", { ...three, flow_ml_min: 4, duration_s: 60 }), // 4 mL
        delivery("MB1", 3, "saline", { volume_ml: 6 }),
        delivery("MB2", 1, "naocl", { ...three, volume_ml: 3 }),
        delivery("MB2", 2, "edta", { volume_ml: 5 }), // EDTA has more
        delivery("ML", 1, "naocl", { ...three, volume_ml: 5 }),
        delivery("ML", 2, "chx", { volume_ml: 5 }), // as much: hypochlorite goes first
        delivery("D", 1, "naocl", three), // no volume of anything is known
        delivery("DB", 1, "naocl", { ...three, volume_ml: 0 }), // nothing flowed: no main irrigant
        delivery("DL", 1, "naocl", { ...three, volume_ml: 1 }),
        delivery("DL", 2, "saline"), // of unknown volume: the known ones decide
        // MM: nothing is written down.
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not met",
      "V-1/ML": "met",
      "V-1/D": "not recorded",
      "V-1/DB": "not recorded",
      "V-1/DL": "met",
      "V-1/MM": "not recorded",
    },
  },
  {
    says: "all hypochlorite must lie within 0.5 to 6 %, both ends included",
    criterion,
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL"].map((name) => canal(name)),
      irrigation: [
        delivery("MB1", 1, "naocl", { concentration_pct: 0.5, volume_ml: 5 }),
        delivery("MB2", 1, "naocl", { concentration_pct: 6, volume_ml: 5 }),
        delivery("ML", 1, "naocl", { concentration_pct: 0.4, volume_ml: 5 }),
        delivery("D", 1, "naocl", { ...three, volume_ml: 5 }),
        delivery("D", 2, "naocl", { concentration_pct: 6.5, volume_ml: 0.5 }), // too strong, if little
        delivery("DB", 1, "naocl", { volume_ml: 5 }), // of unknown strength
        delivery("DL", 1, "saline", { volume_ml: 5 }),
        delivery("DL", 2, "naocl", { volume_ml: 1 }), // of unknown strength, but not the main one anyway
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "met",
      "V-1/ML": "not met",
      "V-1/D": "not met",
      "V-1/DB": "not recorded",
      "V-1/DL": "not met",
    },
  },
  {
    says: "a note for the whole tooth holds for each canal: its strength counts, its volume does not",
    criterion,
    records: {
      sessions: [visit("V-1"), visit("V-2"), visit("V-3")],
      canals: [
        canal("MB"), // 3 % of its own, 3 % in the note
        canal("main", { session_id: "V-2" }), // the note does not say how strong
        canal("main", { session_id: "V-3" }), // nothing of its own, but the note is too strong
      ],
      irrigation: [
        delivery("MB", 1, "naocl", { ...three, volume_ml: 5 }),
        wholeTooth(1, "naocl", { ...three, volume_ml: 20 }),
        wholeTooth(2, "saline", { volume_ml: 20 }),
        delivery("main", 1, "naocl", { ...three, volume_ml: 5, session_id: "V-2" }),
        wholeTooth(1, "naocl", { session_id: "V-2" }),
        wholeTooth(1, "naocl", { concentration_pct: 8, session_id: "V-3" }),
      ],
    },
    outcomes: { "V-1/MB": "met", "V-2/main": "not recorded", "V-3/main": "not met" },
  },
  {
    says: "a held delivery of the canal may have been of any strength",
    criterion,
    records: {
      sessions,
      canals: [canal("MB"), canal("ML"), canal("D")],
      irrigation: [
        delivery("MB", 1, "naocl", { ...three, volume_ml: 5 }),
        delivery("ML", 1, "naocl", { ...three, volume_ml: 5 }),
        delivery("D", 1, "naocl", { concentration_pct: 8, volume_ml: 5 }),
      ],
      held: [
        held("irrigation", { canal: "MB" }),
        held("irrigation", { canal: "D" }),
        held("irrigation"), // it names no canal
        held("instruments", { canal: "ML" }), // not a delivery
      ],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met", "V-1/D": "not met" },
  },
  {
    says: "a time read off a timer that ran on gives no volume",
    criterion,
    records: {
      sessions,
      canals: [canal("MB", { timer_reset: "no" }), canal("ML", { timer_reset: "yes" })],
      irrigation: ["MB", "ML"].map((name) =>
        delivery(name, 1, "naocl", { ...three, flow_ml_min: 4, duration_s: 60, basis: "timer" }),
      ),
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met" },
  },
  {
    says: "an allergy excuses the canal, by its own row or by the visit's",
    criterion,
    records: {
      sessions,
      canals: [canal("MB"), canal("ML"), canal("D")],
      irrigation: [
        delivery("MB", 1, "chx", { volume_ml: 5 }),
        delivery("ML", 1, "naocl", { ...three, volume_ml: 5 }), // met: nothing to excuse
      ],
      exceptions: [exception(criterion, "allergy", { canal: "MB" }), exception(criterion, "other")],
    },
    outcomes: { "V-1/MB": "excepted: allergy", "V-1/ML": "met", "V-1/D": "excepted: other" },
  },
];
