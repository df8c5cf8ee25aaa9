import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { criterionIds } from "@/lib/records/criterion-id";
import { type CanalDraft, canalDraft, canalNamesDrawn } from "./arbitrary-canal";
import { deliveries } from "./arbitrary-delivery";
import { maybe } from "./arbitrary-value";

/** What is drawn of a visit, before it is known which practices there are. */
export type VisitDraft = {
  /** Picks the practice. */
  readonly place: number;
  readonly session: Values;
  readonly canals: CanalDraft[];
  readonly wholeTooth: Values[];
  /** How many of the deliveries bear their time. */
  readonly timed: "all" | "some" | "none";
  readonly steps: Values[];
  readonly exceptions: Values[];
  readonly held: HeldDraft[];
};

type HeldTable = "irrigation" | "instruments" | "canals" | "steps" | "followups" | "exceptions";
type HeldDraft = {
  readonly table: HeldTable;
  readonly canal?: string;
  /** It names a visit that nobody has. */
  readonly lost: boolean;
  /** It names the practice. */
  readonly practice: boolean;
};

const chairs = ["1", "2"] as const;
export const clinicians = ["A", "B", "C"] as const;

// Hours and minutes beside midnight in London, Auckland and St John's, summer and winter, on days beside the ends of
// quarters and the nights when London's clocks change, and about 180 days before some of them, which is how far
// a course of treatment reaches. All are past, as a time to come is held.
const startedAt = fc
  .tuple(
    fc.constantFrom(
      "2024-01-02",
      "2024-01-03",
      "2024-02-15",
      "2024-02-16",
      "2024-03-30",
      "2024-03-31",
      "2024-06-30",
      "2024-06-30",
      "2024-07-01",
      "2024-08-14",
      "2024-08-14",
      "2024-09-30",
      "2024-10-01",
      "2024-10-27",
    ),
    fc.constantFrom("00", "01", "02", "03", "10", "11", "12", "22", "23"),
    fc.constantFrom("00", "29", "30", "59"),
  )
  .map(([day, hour, minute]) => `${day}T${hour}:${minute}:00.000Z`);

const session: fc.Arbitrary<Values> = fc.record({
  // Few numbers, so that two practices come to have a visit of the same one.
  session_id: fc.integer({ min: 1, max: 9 }).map((number) => `V${number}`),
  chair: fc.constantFrom(...chairs),
  clinician: fc.constantFrom(...clinicians),
  // Few patients and teeth, so that visits come to be of one course.
  patient: fc.constantFrom("hash-1", "hash-1", "hash-1", "hash-2", "hash-3"),
  case_id: fc.constantFrom(undefined, undefined, undefined, "K-1", "K-2"),
  started_at: startedAt,
  tooth: fc.constantFrom("36", "36", "36", "36", "11", "24", "54"),
  tooth_notation: fc.constant("fdi"),
  treatment: fc.constantFrom(
    "primary",
    "primary",
    "primary",
    "retreatment",
    "emergency",
    "dressing",
    "other",
  ),
  outcome: fc.constantFrom("completed", "completed", "continuing", "abandoned"),
});

// Whether it names a canal is settled later, as only canals of the visit may be named.
const named = { canal: maybe(fc.constantFrom(...canalNamesDrawn)) };

const step: fc.Arbitrary<Values> = fc
  .record({
    ...named,
    step: fc.constantFrom(
      ...["dam", "dam", "dam", "length-radiograph", "apex-locator", "apex-locator"],
      ...["patency", "patency", "glide-path", "glide-path", "filling-removed"],
      ...["torque-calibration", "torque-calibration"],
      ...["line-check", "line-check", "handpiece-care", "handpiece-care", "consent"],
    ),
    status: fc.constantFrom(
      ...["done", "done", "done", "not-done", "not-done", "not-applicable", "excepted"],
    ),
    reason: fc.constantFrom("not-possible", "other"),
  })
  .map((row) => (row.status === "excepted" ? row : { ...row, reason: undefined }));

const exception: fc.Arbitrary<Values> = fc.record({
  ...named,
  criterion: fc.constantFrom("timer-reset", "isolation", ...criterionIds),
  reason: fc.constantFrom("equipment-failure", "not-possible"),
});

export const visitDraft: fc.Arbitrary<VisitDraft> = fc.record({
  place: fc.nat({ max: 2 }),
  session,
  canals: fc.uniqueArray(canalDraft(clinicians), {
    maxLength: 3,
    selector: (canal) => canal.row.canal,
  }),
  wholeTooth: fc.oneof(
    { weight: 3, arbitrary: fc.constant<Values[]>([]) },
    { weight: 1, arbitrary: deliveries(2) },
  ),
  timed: fc.constantFrom("all", "some", "none"),
  steps: fc.uniqueArray(step, {
    maxLength: 12,
    size: "max",
    selector: (row) => `${row.canal} ${row.step}`,
  }),
  exceptions: fc.uniqueArray(exception, {
    maxLength: 4,
    size: "max",
    selector: (row) => `${row.canal} ${row.criterion}`,
  }),
  held: fc.oneof(
    { weight: 3, arbitrary: fc.constant<HeldDraft[]>([]) },
    {
      weight: 1,
      arbitrary: fc.array(
        fc.record({
          table: fc.constantFrom<HeldTable>(
            "irrigation",
            "irrigation",
            "instruments",
            "instruments",
            "canals",
            "steps",
            "followups",
            "exceptions",
          ),
          // Of the visit or not, or none: written for the whole tooth, or not a canal's name.
          canal: maybe(fc.constantFrom(...canalNamesDrawn)),
          lost: fc.integer({ min: 0, max: 5 }).map((number) => number === 0),
          practice: fc.boolean(),
        }),
        { maxLength: 2 },
      ),
    },
  ),
});
