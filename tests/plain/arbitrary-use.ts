import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { maybe, numbered, often, rarely } from "./arbitrary-value";

/** A use of an instrument, and what became of a separation later. */
export type UseDraft = { readonly row: Values; readonly followups: readonly FollowUpDraft[] };

/** Days after the visit, and what was written down then. */
export type FollowUpDraft = {
  readonly after: number;
  readonly management: string | undefined;
  readonly patient_told: boolean | undefined;
};

const management = fc.constantFrom("retrieved", "bypassed", "retained", "referred");

const followups: fc.Arbitrary<FollowUpDraft[]> = fc.uniqueArray(
  fc.record({
    // On both sides of the 90 days that a separation may stay pending.
    after: fc.constantFrom(0, 1, 30, 90, 91, 120),
    management: maybe(fc.oneof(management, fc.constant("pending"))),
    patient_told: maybe(fc.boolean()),
  }),
  { maxLength: 2, selector: ({ after }) => after },
);

const use: fc.Arbitrary<Values> = fc
  .record({
    kind: fc.constantFrom("oscillating", "rotary", "reciprocating", "hand"),
    instrument_id: maybe(fc.constantFrom("i-1", "i-2", "i-3")),
    uses: maybe(fc.constantFrom(1, 2, 4)),
    lot: often(fc.constantFrom("L-1", "L-2")),
    steriliser_cycle: rarely(fc.constant("A-1")),
    single_use: maybe(fc.boolean()),
    use_number: often(fc.constantFrom(1, 1, 2, 4, 5)),
    speed_per_min: often(fc.constantFrom(300, 500, 501)),
    torque_n_cm: often(fc.constantFrom(2, 3, 3.5)),
    separated: maybe(fc.constantFrom(0, 0, 0, 1, 3)),
    third: often(fc.constantFrom("coronal", "apical")),
    fragment_mm: often(fc.constantFrom(2, 3.5)),
    management: maybe(fc.oneof(management, fc.constantFrom("pending", "pending"))),
    patient_told: maybe(fc.constantFrom(true, true, false)),
  })
  // No more than the row stands for can have separated, and what became of it is told of those that did.
  .map((row) => {
    const separated = row.separated && Math.min(row.separated, row.uses ?? 1);
    const { third, fragment_mm, management, patient_told, ...others } = row;
    const told = { third, fragment_mm, management, patient_told };
    return { ...others, separated, ...(separated ? told : {}) };
  });

/** Up to so many uses of instruments in a canal. */
export function uses(most: number): fc.Arbitrary<UseDraft[]> {
  return numbered(use, most).chain((rows) =>
    fc.tuple(...rows.map((row) => followups.map((later) => ({ row, followups: later })))),
  );
}
