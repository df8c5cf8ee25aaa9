import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import { canal, type HandMadeCase } from "./hand-made-case";

// Worked by hand from the definition; beside each row stands what it comes to.
// From 16 May to 14 August 2024 are 90 days: 15 + 30 + 31 + 14.

const criterion = "separation-managed";
const all = { third: "apical", fragment_mm: 3, management: "retained", patient_told: true };
const parted = (seq: number, others: Values = {}): Values => ({
  session_id: "V-1",
  canal: "MB",
  seq,
  kind: "rotary",
  separated: 1,
  ...all,
  ...others,
});
/** A separation of which one thing is not written down. */
const without = (seq: number, name: keyof typeof all, others: Values = {}): Values => {
  const { [name]: _, ...rest } = parted(seq);
  return { ...rest, ...others };
};
const later = (seq: number, day: string, others: Values): Values => ({
  session_id: "V-1",
  canal: "MB",
  seq,
  day,
  ...others,
});

/** A pending separation of that day, where the practice's last visit was on 14 August. */
function pendingSince(
  day: string,
  followups: Values[],
  outcome: string,
  says: string,
): HandMadeCase {
  return {
    says,
    criterion,
    records: {
      sessions: [
        visit("V-1", { started_at: `${day}T09:00:00.000Z` }),
        visit("V-2", { started_at: "2024-08-14T09:00:00.000Z", patient: "hash-other" }),
        // Another practice's later visits say nothing of this one's.
        visit("V-3", { practice: "SOUTH", started_at: "2024-12-01T09:00:00.000Z" }),
      ],
      canals: [canal("MB")],
      instruments: [parted(1, { management: "pending" })],
      followups,
    },
    outcomes: { "V-1/MB/1": outcome },
  };
}

/** Separations, and what became of them. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "third, fragment and management are written down, and the patient was told",
    criterion,
    records: {
      sessions: [visit("V-1", { treatment: "emergency", outcome: "abandoned" })], // every visit counts
      canals: [canal("MB", { preparation: "none" })],
      instruments: [
        parted(1),
        without(2, "third"),
        without(3, "fragment_mm"),
        without(4, "management"),
        without(5, "patient_told"),
        parted(6, { patient_told: false }),
        without(7, "third", { patient_told: false }), // whatever the third, the patient was not told
        parted(8, { separated: 0 }), // no separation
        { session_id: "V-1", canal: "MB", seq: 9, kind: "rotary" }, // not known to be one
      ],
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "not recorded",
      "V-1/MB/3": "not recorded",
      "V-1/MB/4": "not recorded",
      "V-1/MB/5": "not recorded",
      "V-1/MB/6": "not met",
      "V-1/MB/7": "not met",
      "V-1/MB/8": "not counted",
      "V-1/MB/9": "not counted",
    },
  },
  {
    says: "what follow-ups bear completes the row; once told is told",
    criterion,
    records: {
      sessions: [visit("V-1")],
      canals: [canal("MB")],
      instruments: [
        without(1, "patient_told"), // told at the follow-up
        parted(2, { patient_told: false }), // told at the follow-up
        without(3, "management"), // retrieved at the follow-up
        without(4, "patient_told"), // the follow-up says: not told
        parted(5), // told at the visit, whatever the follow-up says
        without(6, "patient_told"), // a follow-up without an answer
        without(7, "management"), // a follow-up that says pending, as it is to this day
      ],
      followups: [
        later(1, "2024-08-20", { patient_told: true }),
        later(2, "2024-08-20", { patient_told: true }),
        later(3, "2024-08-20", { management: "retrieved" }),
        later(4, "2024-08-20", { patient_told: false }),
        later(5, "2024-08-20", { patient_told: false, management: "pending" }),
        later(6, "2024-08-20", {}),
        later(7, "2024-08-20", { management: "pending" }),
      ],
    },
    outcomes: {
      "V-1/MB/1": "met",
      "V-1/MB/2": "met",
      "V-1/MB/3": "met",
      "V-1/MB/4": "not met",
      "V-1/MB/5": "met",
      "V-1/MB/6": "not recorded",
      "V-1/MB/7": "met",
    },
  },
  pendingSince("2024-05-16", [], "met", "pending for 90 days: not yet too long"),
  pendingSince("2024-05-15", [], "not met", "pending for 91 days"),
  pendingSince(
    "2024-03-01",
    [later(1, "2024-05-30", { management: "bypassed" })], // 30 + 30 + 30 days
    "met",
    "settled on the 90th day",
  ),
  pendingSince(
    "2024-03-01",
    [later(1, "2024-05-31", { management: "bypassed" })],
    "not met",
    "settled on the 91st day",
  ),
  pendingSince(
    "2024-03-01",
    [
      later(1, "2024-06-30", { management: "retrieved" }),
      later(1, "2024-03-10", { management: "referred" }), // nine days
      later(1, "2024-03-05", { patient_told: true }),
    ],
    "met",
    "what settled it first counts, whatever the order of the rows",
  ),
  pendingSince(
    "2024-03-01",
    [later(1, "2024-03-10", { management: "pending" })],
    "not met",
    "still pending after a follow-up",
  ),
  {
    says: "a follow-up belongs to its own use",
    criterion,
    records: {
      sessions: [visit("V-1"), visit("V-2", { started_at: "2024-12-20T09:00:00.000Z" })],
      canals: [canal("MB"), canal("ML")],
      instruments: [
        parted(1, { management: "pending" }), // to the last visit 128 days
        parted(2, { management: "pending" }), // settled after six
        parted(1, { canal: "ML", management: "pending" }),
      ],
      followups: [later(2, "2024-08-20", { management: "retrieved" })],
    },
    outcomes: { "V-1/MB/1": "not met", "V-1/MB/2": "met", "V-1/ML/1": "not met" },
  },
  {
    says: "a row counts as many separations as it says",
    criterion,
    records: {
      sessions: [visit("V-1")],
      canals: [canal("MB")],
      instruments: [parted(1, { uses: 5, separated: 2 })],
    },
    outcomes: { "V-1/MB/1": "met" },
    weights: { "V-1/MB/1": 2 },
  },
];
