import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clopperPearson, jeffreys, midP, wilson } from "@/lib/statistics/proportion-interval";

// Properties that follow from the definitions; no published value is used here (source of those: proportion-interval.test.ts).

const methods = { wilson, clopperPearson, midP, jeffreys };
const counts = fc
  .integer({ min: 1, max: 20_000 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const level = fc.double({ min: 0.5, max: 0.9999, noNaN: true });

// Two orders of rounding that a sum or a root may differ by.
const ROUNDING = 1e-12;

for (const [name, method] of Object.entries(methods)) {
  const ends = (x: number, n: number, at: number) => {
    const found = method(x, n, at);
    if (found === undefined) throw new Error("an interval was expected");
    return found;
  };

  describe(`On random counts, ${name}`, () => {
    test("ends exactly at 0 without events and at 1 with nothing but events.", () => {
      fc.assert(
        fc.property(fc.integer({ min: 1, max: 5_000_000 }), level, (n, at) => {
          expect(Object.is(ends(0, n, at).lower, 0)).toBe(true);
          expect(ends(n, n, at).upper).toBe(1);
          expect(ends(0, n, at).upper).toBeGreaterThan(0);
          expect(ends(0, n, at).upper).toBeLessThan(1);
          expect(ends(n, n, at).lower).toBeGreaterThan(0);
          expect(ends(n, n, at).lower).toBeLessThan(1);
        }),
      );
    });

    test("is the mirror of the interval for what did not happen.", () => {
      fc.assert(
        fc.property(counts, level, ([x, n], at) => {
          const found = ends(x, n, at);
          const mirrored = ends(n - x, n, at);
          expect(Math.abs(found.lower - (1 - mirrored.upper))).toBeLessThan(ROUNDING);
          expect(Math.abs(found.upper - (1 - mirrored.lower))).toBeLessThan(ROUNDING);
        }),
      );
    });

    test("never leaves [0, 1], has width, and holds the proportion seen.", () => {
      fc.assert(
        fc.property(counts, level, ([x, n], at) => {
          const found = ends(x, n, at);
          expect(found.lower).toBeGreaterThanOrEqual(0);
          expect(found.upper).toBeLessThanOrEqual(1);
          expect(found.upper).toBeGreaterThan(found.lower);
          expect(found.lower).toBeLessThanOrEqual(x / n);
          expect(found.upper).toBeGreaterThanOrEqual(x / n);
        }),
      );
    });

    test("widens on both sides as the level rises.", () => {
      fc.assert(
        fc.property(counts, level, level, ([x, n], one, other) => {
          const narrow = ends(x, n, Math.min(one, other));
          const wide = ends(x, n, Math.max(one, other));
          expect(wide.lower).toBeLessThanOrEqual(narrow.lower + ROUNDING);
          expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper - ROUNDING);
        }),
      );
    });

    test("moves up with every further event.", () => {
      fc.assert(
        fc.property(counts, level, ([x, n], at) => {
          fc.pre(x < n);
          expect(ends(x + 1, n, at).lower).toBeGreaterThan(ends(x, n, at).lower);
          expect(ends(x + 1, n, at).upper).toBeGreaterThan(ends(x, n, at).upper);
        }),
      );
    });
  });
}

test("On random counts the mid-P interval lies within the exact one.", () => {
  fc.assert(
    fc.property(counts, level, ([x, n], at) => {
      const inner = midP(x, n, at);
      const outer = clopperPearson(x, n, at);
      expect(inner?.lower).toBeGreaterThanOrEqual((outer?.lower ?? Number.NaN) - ROUNDING);
      expect(inner?.upper).toBeLessThanOrEqual((outer?.upper ?? Number.NaN) + ROUNDING);
    }),
  );
});
