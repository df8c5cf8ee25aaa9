import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";

describe("How many standard errors a clustered interval reaches", () => {
  // Computed with R 4.2.2: qt((1 - level) / 2, K - 1, lower.tail = FALSE). Those at 95 % stand in every table
  // of Student's t: 12.706, 4.303, 2.262, 2.131.
  for (const [clusters, level, reach] of [
    [2, 0.9, 6.313751514675045],
    [2, 0.95, 12.706204736174694],
    [2, 0.998, 318.30883898555015],
    [3, 0.95, 4.302652729749462],
    [10, 0.9, 1.8331129326562374],
    [10, 0.95, 2.262157162798205],
    [16, 0.95, 2.131449545559775],
    [16, 0.998, 3.7328344253108994],
    [200, 0.95, 1.971956544251752],
  ] as const) {
    test(`agrees with R for ${clusters} clusters at ${level}.`, () => {
      const found = tQuantileOf(clusters, level) as number;
      expect(Math.abs(found / reach - 1)).toBeLessThan(1e-10);
    });
  }

  test("is not known under two clusters.", () => {
    expect(tQuantileOf(0, 0.95)).toBeUndefined();
    expect(tQuantileOf(1, 0.95)).toBeUndefined();
  });

  test("falls with more clusters, down to the normal quantile, and rises with the level.", () => {
    const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 400 }), level, (clusters, at) => {
        const reach = tQuantileOf(clusters, at) as number;
        expect(tQuantileOf(clusters + 1, at)).toBeLessThan(reach);
        expect(tQuantileOf(clusters, at + (1 - at) / 2)).toBeGreaterThan(reach);
      }),
      { seed: 33 },
    );
    // From tables of the normal distribution: 1.959964.
    expect(tQuantileOf(100_000_000, 0.95)).toBeCloseTo(1.959964, 6);
  });

  test("refuses what cannot be.", () => {
    for (const [clusters, level] of [
      [-1, 0.95],
      [2.5, 0.95],
      [Number.NaN, 0.95],
      [5, 0],
      [5, 1],
      [5, Number.NaN],
    ] as const) {
      expect(() => tQuantileOf(clusters, level)).toThrow(RangeError);
    }
  });
});
