import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import { canal, delivery, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand from the definition of a course: the visits of one practice, patient and tooth, up to the one at which
// the canal was filled and after the filling before it, with one number of the case, or else within 180 days.
// From 16 February to 14 August 2024 are 180 days: 13 + 31 + 30 + 31 + 30 + 31 + 14.

const criterion = "hypochlorite-floor";

/** V-1 gives MB1 6 mL and leaves it open, V-2 on 14 August gives 5 mL and fills it: 11 mL, or 5 mL of V-2 alone. */
function twoVisits(first: Values, second: Values = {}): HandMadeCase["records"] {
  return {
    sessions: [
      visit("V-1", { started_at: "2024-08-01T09:00:00.000Z", outcome: "continuing", ...first }),
      visit("V-2", { started_at: "2024-08-14T09:00:00.000Z", ...second }),
    ],
    canals: [canal("MB1", { filled: false }), canal("MB1", { session_id: "V-2", filled: true })],
    irrigation: [
      delivery("MB1", 1, "naocl", { volume_ml: 6 }),
      delivery("MB1", 1, "naocl", { volume_ml: 5, session_id: "V-2" }),
    ],
  };
}
const together = { "V-1/MB1": "not counted", "V-2/MB1": "met" };
const apart = { "V-1/MB1": "not counted", "V-2/MB1": "not met" };
const on = (day: string) => ({ started_at: `${day}T09:00:00.000Z` });

/** Whole courses of treatment. */
export const cases: readonly HandMadeCase[] = [
  { says: "two visits add up", criterion, records: twoVisits({}), outcomes: together },
  {
    says: "an emergency visit and an abandoned one before it are of the course",
    criterion,
    records: twoVisits({ treatment: "emergency", outcome: "abandoned" }),
    outcomes: { "V-1/MB1": "not counted", "V-2/MB1": "met" },
  },
  {
    says: "180 days before is within the course",
    criterion,
    records: twoVisits(on("2024-02-16")),
    outcomes: together,
  },
  {
    says: "181 days before is another course",
    criterion,
    records: twoVisits(on("2024-02-15")),
    outcomes: apart,
  },
  {
    says: "one number of the case joins visits however far apart",
    criterion,
    records: twoVisits({ ...on("2024-01-02"), case_id: "K-1" }, { case_id: "K-1" }),
    outcomes: together,
  },
  {
    says: "two numbers keep visits apart however near",
    criterion,
    records: twoVisits({ case_id: "K-1" }, { case_id: "K-2" }),
    outcomes: apart,
  },
  {
    says: "where only one visit bears a number, the 180 days decide",
    criterion,
    records: twoVisits({}, { case_id: "K-2" }),
    outcomes: together,
  },
  {
    says: "another tooth",
    criterion,
    records: twoVisits({ tooth: "37" }),
    outcomes: apart,
  },
  {
    says: "another patient",
    criterion,
    records: twoVisits({ patient: "hash-other" }),
    outcomes: apart,
  },
  {
    says: "another practice",
    criterion,
    records: twoVisits({ practice: "SOUTH" }),
    outcomes: apart,
  },
  {
    says: "a visit after the filling adds nothing to it",
    criterion,
    records: twoVisits(on("2024-08-20")),
    outcomes: apart,
  },
  {
    says: "a filling ends the course: what went before it does not count for the next",
    criterion,
    records: {
      ...twoVisits({}),
      canals: [
        canal("MB1", { filled: true }), // 6 mL
        canal("MB1", { session_id: "V-2", filled: true }), // 5 mL
      ],
    },
    outcomes: { "V-1/MB1": "not met", "V-2/MB1": "not met" },
  },
  {
    says: "that another canal was filled at the first visit does not end this one's course",
    criterion,
    records: {
      ...twoVisits({}),
      canals: [
        canal("MB1", { filled: false }),
        canal("ML", { filled: true }), // no delivery of its own: not recorded
        canal("MB1", { session_id: "V-2", filled: true }),
      ],
    },
    outcomes: { ...together, "V-1/ML": "not recorded" },
  },
  {
    says: "a note for the whole tooth at the first visit may be the 5 mL that are missing",
    criterion,
    records: {
      ...twoVisits({}),
      irrigation: [
        wholeTooth(1, "naocl"),
        delivery("MB1", 1, "naocl", { volume_ml: 5, session_id: "V-2" }),
      ],
    },
    outcomes: { "V-1/MB1": "not counted", "V-2/MB1": "not recorded" },
  },
  {
    says: "a visit at which the canal has no row contributes nothing, not even its whole-tooth notes",
    criterion,
    records: {
      ...twoVisits({}),
      canals: [canal("ML", { filled: false }), canal("MB1", { session_id: "V-2", filled: true })],
      irrigation: [
        wholeTooth(1, "naocl"),
        delivery("MB1", 1, "naocl", { volume_ml: 5, session_id: "V-2" }),
      ],
      held: [held("irrigation", { canal: "MB1" })],
    },
    outcomes: { "V-1/ML": "not counted", "V-2/MB1": "not met" },
  },
  {
    says: "a visit of the course without a delivery of its own adds nothing",
    criterion,
    records: {
      ...twoVisits({}),
      irrigation: [delivery("MB1", 1, "naocl", { volume_ml: 5, session_id: "V-2" })],
    },
    outcomes: apart,
  },
  {
    says: "a held delivery of the first visit may be what is missing",
    criterion,
    records: {
      ...twoVisits({}),
      irrigation: [delivery("MB1", 1, "naocl", { volume_ml: 5, session_id: "V-2" })],
      held: [held("irrigation", { canal: "MB1" })],
    },
    outcomes: { "V-1/MB1": "not counted", "V-2/MB1": "not recorded" },
  },
  {
    says: "everyone who worked on the canal shares the unit, each once",
    criterion,
    records: {
      ...twoVisits({ clinician: "A" }, { clinician: "B" }),
      canals: [
        canal("MB1", { filled: false, clinician: "C" }), // not A's: C worked on the canal
        canal("MB1", { session_id: "V-2", filled: true }),
      ],
    },
    outcomes: together,
    clinicians: { "V-2/MB1": ["B", "C"] },
  },
  {
    says: "the same clinician at both visits counts once",
    criterion,
    records: twoVisits({}),
    outcomes: together,
    clinicians: { "V-2/MB1": ["A"] },
  },
  {
    says: "EDTA of two visits adds up: 30 s of dwell at each are 60 s",
    criterion: "chelator",
    records: {
      ...twoVisits({ clinician: "A" }, { clinician: "B" }),
      irrigation: [
        delivery("MB1", 1, "edta", { concentration_pct: 17, duration_s: 0, dwell_s: 30 }),
        delivery("MB1", 1, "edta", {
          ...{ concentration_pct: 17, duration_s: 0, dwell_s: 30 },
          session_id: "V-2",
        }),
      ],
    },
    outcomes: together,
    clinicians: { "V-2/MB1": ["A", "B"] },
  },
  {
    says: "181 days apart: 30 s of the second visit alone",
    criterion: "chelator",
    records: {
      ...twoVisits(on("2024-02-15")),
      irrigation: [
        delivery("MB1", 1, "edta", { concentration_pct: 17, duration_s: 0, dwell_s: 30 }),
        delivery("MB1", 1, "edta", {
          ...{ concentration_pct: 17, duration_s: 0, dwell_s: 30 },
          session_id: "V-2",
        }),
      ],
    },
    outcomes: apart,
  },
];
