import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import { canal, exception, type HandMadeCase } from "./hand-made-case";

// Worked by hand from the definitions, speed and torque with limits of 500 a minute and 3 N.cm for every kind; beside
// each row stands what it comes to. Every visit counts, so these are of an abandoned emergency.

const sessions = [visit("V-1", { treatment: "emergency", outcome: "abandoned" })];
const canals = [canal("MB"), canal("ML")];
const use = (seq: number, others: Values = {}): Values => ({
  session_id: "V-1",
  canal: "MB",
  seq,
  kind: "rotary",
  ...others,
});

/** Uses of instruments. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "speed and torque within the limits of the kind",
    criterion: "speed-torque",
    records: {
      sessions,
      canals,
      instruments: [
        use(1, { speed_per_min: 500, torque_n_cm: 3 }),
        use(2, { kind: "oscillating", speed_per_min: 501, torque_n_cm: 2 }), // too fast
        use(3, { kind: "reciprocating", speed_per_min: 300, torque_n_cm: 3.5 }), // too strong
        use(4, { speed_per_min: 300 }), // with what torque?
        use(5, { speed_per_min: 600 }), // too fast, with whatever torque
        use(6), // nothing is written down
        use(7, { kind: "hand" }), // no motor drives it
        use(8, { canal: "ML", speed_per_min: 600, torque_n_cm: 2 }), // excused below
      ],
      exceptions: [exception("speed-torque", "equipment-failure", { canal: "ML" })],
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "not met",
      "V-1/MB/3": "not met",
      "V-1/MB/4": "not recorded",
      "V-1/MB/5": "not met",
      "V-1/MB/6": "not recorded",
      "V-1/MB/7": "not counted",
      "V-1/ML/8": "excepted: equipment-failure",
    },
  },
  {
    says: "no more than four patients, and one where it is for single use",
    criterion: "use-limit",
    records: {
      sessions,
      canals,
      instruments: [
        use(1, { use_number: 1, single_use: true }),
        use(2, { use_number: 4, single_use: false }),
        use(3, { use_number: 5, single_use: false }), // one patient too many
        use(4, { use_number: 2, single_use: true }), // for single use
        use(5, { use_number: 1 }), // the first, for single use or not
        use(6, { use_number: 3 }), // within the limit, unless it was for single use
        use(7, { use_number: 5 }), // over the limit in any case
        use(8, { single_use: true }), // which use was it?
        use(9, { kind: "hand" }), // instruments used by hand count too
        use(1, { canal: "ML", use_number: 5 }), // excused below
      ],
      exceptions: [exception("use-limit", "other", { canal: "ML" })],
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "met",
      "V-1/MB/3": "not met",
      "V-1/MB/4": "not met",
      "V-1/MB/5": "met",
      "V-1/MB/6": "not recorded",
      "V-1/MB/7": "not met",
      "V-1/MB/8": "not recorded",
      "V-1/MB/9": "not recorded",
      "V-1/ML/1": "excepted: other",
    },
  },
  {
    says: "a lot, and a steriliser cycle where it may have been used before; what is missing is not met",
    criterion: "traceable",
    records: {
      sessions,
      canals,
      instruments: [
        use(1, { lot: "L-1", steriliser_cycle: "A-1" }),
        use(2, { lot: "L-1", use_number: 1 }), // the first use: no cycle is due
        use(3, { lot: "L-1", single_use: true }), // single use: no cycle is due
        use(4, { lot: "L-1", use_number: 2 }), // which cycle?
        use(5, { lot: "L-1" }), // perhaps used before, and then no cycle
        use(6, { steriliser_cycle: "A-1", use_number: 1 }), // which lot?
        use(7),
      ],
      exceptions: [exception("traceable", "other")], // nothing excuses it
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "met",
      "V-1/MB/3": "met",
      "V-1/MB/4": "not met",
      "V-1/MB/5": "not met",
      "V-1/MB/6": "not met",
      "V-1/MB/7": "not met",
    },
  },
  {
    says: "a row stands for as many uses as it says, one where it says nothing",
    criterion: "use-limit",
    records: {
      sessions,
      canals,
      instruments: [
        use(1, { uses: 3, use_number: 1 }),
        use(2, { use_number: 1 }),
        use(3, { uses: 2 }),
      ],
    },
    outcomes: { "V-1/MB/1": "met", "V-1/MB/2": "met", "V-1/MB/3": "not recorded" },
    weights: { "V-1/MB/1": 3, "V-1/MB/2": 1, "V-1/MB/3": 2 },
  },
];
