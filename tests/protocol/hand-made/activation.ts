import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definition, where the practice asks for 60 s; beside each row stands what it comes to.

const criterion = "activation";
const sessions = [visit("V-1")];
const filled = (name: string) => canal(name, { filled: true });
const activated = (name: string, seq: number, irrigant: string, activation_s: number) =>
  delivery(name, seq, irrigant, { activation: "ultrasonic", activation_s });

/** Activation of hypochlorite and EDTA in a filled canal. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "60 s over hypochlorite and EDTA together",
    criterion,
    records: {
      sessions,
      canals: [
        ...["MB1", "MB2", "ML", "D"].map(filled),
        canal("DB", { filled: false }),
        canal("DL"), // filled or not: not written down
        filled("MM"),
      ],
      irrigation: [
        activated("MB1", 1, "naocl", 30),
        activated("MB1", 2, "edta", 30),
        activated("MB2", 1, "naocl", 59),
        activated("MB2", 2, "saline", 60), // saline does not count
        delivery("ML", 1, "naocl", { activation: "none" }), // 0 s
        activated("D", 1, "naocl", 60),
        delivery("D", 2, "edta"), // unknown, but 60 s are there
        activated("DB", 1, "naocl", 60),
        activated("DL", 1, "naocl", 60),
        delivery("MM", 1, "naocl", { activation: "none" }), // excused below
      ],
      exceptions: [exception(criterion, "equipment-failure", { canal: "MM" })],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not met",
      "V-1/ML": "not met",
      "V-1/D": "met",
      "V-1/DB": "not counted",
      "V-1/DL": "not recorded",
      "V-1/MM": "excepted: equipment-failure",
    },
  },
  {
    says: "what is missing leaves open only what it could change",
    criterion,
    records: {
      sessions,
      canals: ["MB1", "MB2", "ML", "D", "DB", "DL"].map(filled),
      irrigation: [
        delivery("MB1", 1, "naocl"), // activated or not?
        delivery("MB2", 1, "naocl", { activation: "sonic" }), // for how long?
        delivery("ML", 1, "naocl", { activation_s: 60 }), // how? then it is not known that it was
        delivery("D", 1, "naocl", { activation: "none" }),
        delivery("D", 2, "saline"), // unknown, but of saline
        // DB: nothing is written down.
        delivery("DL", 1, "naocl", { activation: "none" }), // and a held one below
      ],
      held: [held("irrigation", { canal: "DL" })],
    },
    outcomes: {
      "V-1/MB1": "not recorded",
      "V-1/MB2": "not recorded",
      "V-1/ML": "not recorded",
      "V-1/D": "not met",
      "V-1/DB": "not recorded",
      "V-1/DL": "not recorded",
    },
  },
  {
    says: "EDTA noted for the whole tooth may have been activated in each canal",
    criterion,
    records: {
      sessions,
      canals: [filled("MB"), filled("ML")],
      irrigation: [
        delivery("MB", 1, "naocl", { activation: "none" }),
        activated("ML", 1, "naocl", 60),
        wholeTooth(1, "edta", { activation: "sonic", activation_s: 60 }),
      ],
    },
    outcomes: { "V-1/MB": "not recorded", "V-1/ML": "met" },
  },
  {
    says: "the visit at which it was filled, not the whole course",
    criterion,
    records: {
      sessions: [
        visit("V-1", { started_at: "2024-08-01T09:00:00.000Z" }),
        visit("V-2", { started_at: "2024-08-14T09:00:00.000Z" }),
      ],
      canals: [canal("MB", { filled: false }), canal("MB", { session_id: "V-2", filled: true })],
      irrigation: [
        activated("MB", 1, "naocl", 60),
        delivery("MB", 1, "naocl", { session_id: "V-2", activation: "none" }),
      ],
    },
    outcomes: { "V-1/MB": "not counted", "V-2/MB": "not met" },
  },
];
