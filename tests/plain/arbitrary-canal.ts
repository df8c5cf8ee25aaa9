import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";

/** Rows of one canal, or of the whole tooth, that do not say yet to which visit they belong. */
export type CanalDraft = {
  readonly row: Values;
  readonly deliveries: Values[];
  readonly uses: Values[];
};

/** A value that is not recorded now and then. */
export function maybe<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined, freq: 2 });
}

export const canalNamesDrawn = ["MB1", "MB2", "main", "unknown-1"] as const;

// Volumes in halves, times in quarter minutes and flows in powers of two: every sum, product and quotient of them
// is exact in binary, so that two ways of computing must agree to the last bit.
const milliliters = fc.integer({ min: 0, max: 12 }).map((halves) => halves / 2);
const seconds = fc.integer({ min: 0, max: 8 }).map((quarters) => quarters * 15);
const flow = fc.constantFrom(2, 4, 8);

const delivery: fc.Arbitrary<Values> = fc.record({
  irrigant: fc.constantFrom("naocl", "naocl", "edta", "chx", "saline"),
  volume_ml: maybe(milliliters),
  flow_ml_min: maybe(flow),
  duration_s: maybe(seconds),
  dwell_s: maybe(seconds),
  basis: maybe(fc.constantFrom("timer", "timer", "metered", "noted")),
  delivery: fc.constantFrom("continuous", "syringe", "negative-pressure"),
  activation: maybe(fc.constantFrom("none", "none", "sonic", "ultrasonic")),
  activation_s: maybe(seconds),
});

const use: fc.Arbitrary<Values> = fc
  .record({
    kind: fc.constantFrom("oscillating", "rotary", "reciprocating", "hand"),
    instrument_id: maybe(fc.constantFrom("i-1", "i-2", "i-3")),
    uses: maybe(fc.constantFrom(1, 2, 4)),
    separated: maybe(fc.constantFrom(0, 0, 0, 1, 3)),
  })
  // No more than the row stands for can have separated.
  .map((row) => ({ ...row, separated: row.separated && Math.min(row.separated, row.uses ?? 1) }));

export const deliveries = (most: number) => numbered(delivery, most);

/** A canal with its deliveries and uses; `clinicians` are the codes that may have worked on it. */
export function canalDraft(clinicians: readonly string[]): fc.Arbitrary<CanalDraft> {
  return fc.record({
    row: fc.record({
      canal: fc.constantFrom(...canalNamesDrawn),
      clinician: fc.option(fc.constantFrom(...clinicians), { nil: undefined, freq: 1 }),
      working_length_mm: maybe(fc.constantFrom(19, 20.5)),
      length_method: maybe(fc.constantFrom("locator", "radiograph", "both", "estimate")),
      preparation: fc.constantFrom("rotary", "oscillating", "hand", "none"),
      timer_reset: maybe(fc.constantFrom("yes", "no", "no", "no-timer")),
      fragment_on_arrival: maybe(fc.boolean()),
    }),
    deliveries: deliveries(3),
    uses: numbered(use, 3),
  });
}

/** Up to so many rows with a seq each, whose order need not be that of the rows. */
function numbered(row: fc.Arbitrary<Values>, most: number): fc.Arbitrary<Values[]> {
  const one = fc.tuple(fc.integer({ min: 0, max: 9 }), row);
  return fc
    .uniqueArray(one, { maxLength: most, selector: ([seq]) => seq })
    .map((rows) => rows.map(([seq, values]) => ({ ...values, seq })));
}
