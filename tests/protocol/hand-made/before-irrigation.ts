import { visit } from "../../plain/hand-made";
import { canal, exception, type HandMadeCase, step } from "./hand-made-case";

// Worked by hand from the definitions; beside each row stands what it comes to.

/** Isolation, working length and the way down the canal. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "the rubber dam of every visit, an emergency too, by the visit's own step",
    criterion: "isolation",
    records: {
      sessions: ["V-1", "V-2", "V-3", "V-4", "V-5", "V-7", "V-8", "V-9"]
        .map((id) => visit(id, { treatment: "emergency" }))
        .concat(visit("V-6", { outcome: "abandoned" })),
      canals: [canal("main", { session_id: "V-9" })],
      steps: [
        step("dam", "done"),
        step("dam", "not-done", { session_id: "V-2" }),
        // V-3: nothing is written down.
        step("dam", "excepted", { session_id: "V-4", reason: "not-possible" }),
        step("dam", "not-applicable", { session_id: "V-5" }),
        step("dam", "not-applicable", { session_id: "V-6" }), // abandoned goes first
        step("dam", "not-done", { session_id: "V-7" }),
        step("dam", "done", { session_id: "V-8" }),
        step("dam", "done", { session_id: "V-9", canal: "main" }), // of a canal: not the visit's
      ],
      exceptions: [
        exception("isolation", "allergy", { session_id: "V-7" }),
        exception("isolation", "allergy", { session_id: "V-8" }), // met all the same
        exception("isolation", "other", { session_id: "V-4" }), // the step's own reason goes first
      ],
    },
    outcomes: {
      "V-1": "met",
      "V-2": "not met",
      "V-3": "not recorded",
      "V-4": "excepted: not-possible",
      "V-5": "excluded: not-applicable",
      "V-6": "excluded: abandoned",
      "V-7": "excepted: allergy",
      "V-8": "met",
      "V-9": "not recorded",
    },
  },
  {
    says: "working length: half a record is none, what is missing is not met, and nothing excuses it",
    criterion: "length-recorded",
    records: {
      sessions: [visit("V-1")],
      canals: [
        canal("MB1", { working_length_mm: 20, length_method: "estimate" }),
        canal("MB2", { working_length_mm: 20 }),
        canal("ML", { length_method: "locator" }),
        canal("D"),
      ],
      exceptions: [exception("length-recorded", "other", { canal: "D" })],
    },
    outcomes: { "V-1/MB1": "met", "V-1/MB2": "not met", "V-1/ML": "not met", "V-1/D": "not met" },
  },
  {
    says: "how the length was found, as the canal says; a step that contradicts it changes nothing",
    criterion: "length-confirmed",
    records: {
      sessions: [visit("V-1")],
      canals: [
        canal("MB1", { length_method: "locator" }),
        canal("MB2", { length_method: "radiograph", apex: "closed" }),
        canal("ML", { length_method: "both", preparation: "oscillating" }),
        canal("D", { length_method: "estimate" }),
        canal("DB", { length_method: "estimate" }),
      ],
      steps: [step("length-radiograph", "done")],
      exceptions: [exception("length-confirmed", "locator-unusable", { canal: "DB" })],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "met",
      "V-1/ML": "met",
      "V-1/D": "not met",
      "V-1/DB": "excepted: locator-unusable",
    },
  },
  {
    says: "where the canal does not say how, a step done says it, and one not done leaves it open",
    criterion: "length-confirmed",
    records: {
      sessions: [visit("V-1"), visit("V-2"), visit("V-3")],
      canals: [
        canal("MB1"), // the visit's locator serves
        canal("MB2"), // its own step goes before the visit's, and no radiograph is recorded
        canal("ML"), // excepted by its own step
        canal("main", { session_id: "V-2" }), // neither was done: how it was found is not known
        canal("main", { session_id: "V-3", working_length_mm: 20 }), // nothing is written down
      ],
      steps: [
        step("apex-locator", "done"),
        step("apex-locator", "not-done", { canal: "MB2" }),
        step("apex-locator", "excepted", { canal: "ML", reason: "locator-unusable" }),
        step("apex-locator", "not-done", { session_id: "V-2" }),
        step("length-radiograph", "not-done", { session_id: "V-2" }),
      ],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "not recorded",
      "V-1/ML": "excepted: locator-unusable",
      "V-2/main": "not recorded",
      "V-3/main": "not recorded",
    },
  },
  {
    says: "patency or a glide path: one of the two is enough, and both must be known to be missing",
    criterion: "patency",
    records: {
      sessions: [visit("V-1"), visit("V-2")],
      canals: [
        canal("MB1"), // patency of the visit
        canal("MB2"), // not patent by its own step, but a glide path
        canal("ML"), // neither
        canal("D"), // not patent by its own step, and of a glide path nothing is recorded
        canal("DB"), // excepted by its step
        canal("DL"), // excepted by its step, but a glide path was made: met
        canal("MM"), // excepted by the exceptions table
        canal("main", { session_id: "V-2" }), // nothing recorded
      ],
      steps: [
        step("patency", "done"),
        step("patency", "not-done", { canal: "MB2" }),
        step("glide-path", "done", { canal: "MB2" }),
        step("patency", "not-done", { canal: "ML" }),
        step("glide-path", "not-done", { canal: "ML" }),
        step("patency", "not-done", { canal: "D" }),
        step("patency", "excepted", { canal: "DB", reason: "calcified" }),
        step("patency", "excepted", { canal: "DL", reason: "calcified" }),
        step("glide-path", "done", { canal: "DL" }),
        step("patency", "not-done", { canal: "MM" }),
        step("glide-path", "not-applicable", { canal: "MM" }),
      ],
      exceptions: [exception("patency", "calcified", { canal: "MM" })],
    },
    outcomes: {
      "V-1/MB1": "met",
      "V-1/MB2": "met",
      "V-1/ML": "not met",
      "V-1/D": "not recorded",
      "V-1/DB": "excepted: calcified",
      "V-1/DL": "met",
      "V-1/MM": "excepted: calcified",
      "V-2/main": "not recorded",
    },
  },
  {
    says: "a canal whose old filling was not removed is left out; one where that is not recorded is not",
    criterion: "patency",
    records: {
      sessions: [visit("V-1", { treatment: "retreatment" })],
      canals: [canal("MB"), canal("ML")],
      steps: [step("patency", "done"), step("filling-removed", "not-done", { canal: "MB" })],
    },
    outcomes: { "V-1/MB": "excluded: filling-not-removed", "V-1/ML": "met" },
  },
];
