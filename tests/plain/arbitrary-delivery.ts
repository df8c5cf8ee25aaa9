import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { maybe, numbered, often } from "./arbitrary-value";

// Volumes in halves, times in quarter minutes and flows in powers of two: every sum, product and quotient of them
// is exact in binary, so that two ways of computing must agree to the last bit. A flow derived from volume and time is
// not, but none of these comes near the tests' limit without being equal to it.
const milliliters = fc.integer({ min: 0, max: 12 }).map((halves) => halves / 2);
const seconds = fc.integer({ min: 0, max: 8 }).map((quarters) => quarters * 15);
const flow = fc.constantFrom(2, 4, 8, 16);

// On both sides of the bands of the two irrigants whose strength is asked for.
const strengths: Readonly<Record<string, readonly number[]>> = {
  naocl: [0.4, 0.5, 3, 3, 6, 6.5],
  edta: [14.5, 15, 17, 17, 18],
};

const delivery: fc.Arbitrary<Values> = fc
  .constantFrom(
    ...["naocl", "naocl", "naocl", "naocl", "edta", "edta", "chx", "saline"],
    ...["naocl", "edta", "water", "citric-acid", "hedp", "other"],
  )
  .chain((irrigant) =>
    fc.record({
      irrigant: fc.constant(irrigant),
      concentration_pct: often(fc.constantFrom(...(strengths[irrigant] ?? [2]))),
      volume_ml: maybe(milliliters),
      flow_ml_min: maybe(flow),
      duration_s: maybe(seconds),
      dwell_s: maybe(seconds),
      basis: maybe(fc.constantFrom("timer", "timer", "metered", "noted")),
      delivery: fc.constantFrom("continuous", "syringe", "syringe", "negative-pressure"),
      activation: maybe(fc.constantFrom("none", "none", "sonic", "ultrasonic")),
      activation_s: maybe(seconds),
      tip_short_mm: often(fc.constantFrom(-0.5, 0.5, 1, 2, 2, 3, 3.5)),
      // A minute of the visit's hour; what it comes to is settled with the visit.
      minute: fc.integer({ min: 0, max: 5 }),
    }),
  );

/** Deliveries of a canal or of the whole tooth, each with the minute in which it would have been. */
export const deliveries = (most: number): fc.Arbitrary<Values[]> => numbered(delivery, most);
