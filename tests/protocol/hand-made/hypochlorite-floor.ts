import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definition; beside each row stands what it comes to. Courses over visits are in courses.ts.

const criterion = "hypochlorite-floor";
const sessions = [visit("V-1")];
const filled = (name: string) => canal(name, { filled: true });
const naocl = (name: string, seq: number, volume_ml: number) =>
  delivery(name, seq, "naocl", { volume_ml });

/** 10 mL of hypochlorite or more in a filled canal. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "the known part decides where it can; what is unknown leaves open only what it could change",
    criterion,
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL", "MM"].map(filled),
      irrigation: [
        naocl("MB1", 1, 6),
        delivery("MB1", 2, "naocl", { flow_ml_min: 8, duration_s: 30 }), // 4 mL: 10 in all
        naocl("MB2", 1, 9.5),
        delivery("MB2", 2, "saline"), // unknown, but no hypochlorite
        naocl("ML", 1, 9.5),
        delivery("ML", 2, "naocl"), // unknown: it could reach 10
        naocl("D", 1, 10),
        delivery("D", 2, "naocl"), // unknown, but 10 are there
        delivery("DB", 1, "edta", { volume_ml: 20 }), // no hypochlorite: 0 mL
        // DL: nothing is written down.
        naocl("MM", 1, 4), // excused below
      ],
      exceptions: [
        exception(criterion, "not-tolerated", { canal: "MM" }),
        exception(criterion, "allergy", { canal: "D" }), // met: nothing to excuse
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not met",
      "V-1/ML": "not recorded",
      "V-1/D": "met",
      "V-1/DB": "not met",
      "V-1/DL": "not recorded",
      "V-1/MM": "excepted: not-tolerated",
    },
  },
  {
    says: "only canals that were filled; where that is not written down nothing can be told",
    criterion,
    records: {
      sessions,
      canals: [canal("MB", { filled: false }), canal("ML"), canal("D")],
      irrigation: [naocl("MB", 1, 12), naocl("ML", 1, 12), naocl("D", 1, 12)],
      exceptions: [exception(criterion, "allergy", { canal: "D" })],
    },
    outcomes: {
      "V-1/MB": "not counted",
      "V-1/ML": "not recorded",
      "V-1/D": "excepted: allergy",
    },
  },
  {
    says: "hypochlorite noted for the whole tooth may have reached each canal, nobody knows how much",
    criterion,
    records: {
      sessions,
      canals: ["MB", "ML", "D"].map(filled),
      irrigation: [
        naocl("MB", 1, 9.5),
        naocl("ML", 1, 10),
        // D has none of its own.
        wholeTooth(1, "naocl", { volume_ml: 30 }),
        wholeTooth(2, "saline", { volume_ml: 5 }),
      ],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met", "V-1/D": "not recorded" },
  },
  {
    says: "other irrigants noted for the whole tooth change nothing",
    criterion,
    records: {
      sessions,
      canals: [filled("MB")],
      irrigation: [naocl("MB", 1, 9.5), wholeTooth(1, "saline", { volume_ml: 5 })],
    },
    outcomes: { "V-1/MB": "not met" },
  },
  {
    says: "a held delivery of the canal may be the hypochlorite that is missing",
    criterion,
    records: {
      sessions,
      canals: ["MB", "ML", "D"].map(filled),
      irrigation: [naocl("MB", 1, 9.5), naocl("ML", 1, 12), naocl("D", 1, 9.5)],
      held: [
        held("irrigation", { canal: "MB" }),
        held("irrigation", { canal: "ML" }), // 12 mL are there anyway
        held("irrigation"), // it names no canal
        held("irrigation", { canal: "D", practice: "SOUTH" }), // another practice's visit
      ],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met", "V-1/D": "not met" },
  },
  {
    says: "a time read off a timer that ran on gives no volume",
    criterion,
    records: {
      sessions,
      canals: [canal("MB", { filled: true, timer_reset: "no" })],
      irrigation: [delivery("MB", 1, "naocl", { flow_ml_min: 8, duration_s: 120, basis: "timer" })],
    },
    outcomes: { "V-1/MB": "not recorded" },
  },
];
