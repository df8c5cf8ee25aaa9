import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tailProbability } from "@/lib/statistics/tail-probability";

describe("The mid-P tail of a count", () => {
  // Computed with R 4.2.2, I <- function(x, n, t) ifelse(x <= 0, 1, ifelse(x > n, 0,
  //   pbeta(t, x, n - x + 1))) and (I(x, n, t) + I(x + 1, n, t)) / 2; that for 3 of 40 equals
  //   pbinom(3, 40, .05, lower.tail = FALSE) + dbinom(3, 40, .05) / 2.
  for (const [x, n, theta, upper] of [
    [3, 40, 0.05, 0.23070700737620947],
    [5 / 1.2, 100 / 1.2, 0.01, 0.004262405126462917],
    [30 / 1.7, 50 / 1.7, 0.9, 0.9999893427813976],
    [40.5 / 1.5, 41 / 1.5, 0.9, 0.049895463110068775],
    [0, 20, 0.02, 0.6661960141224528],
  ] as const) {
    test(`agrees with R for ${x.toFixed(2)} of ${n.toFixed(2)} at ${theta}.`, () => {
      const tail = tailProbability(x, n, theta);
      expect(Math.abs(tail.upper - upper)).toBeLessThan(1e-12);
      expect(Math.abs(tail.lower - (1 - upper))).toBeLessThan(1e-12);
      expect(Math.abs(tail.p - 2 * Math.min(upper, 1 - upper))).toBeLessThan(1e-12);
    });
  }

  test("of one event in 20 canals at 1 % is anything but rare, though drawn limits call it outside.", () => {
    // Computed: 1 − .99^20 = .18 for one event or more in 20 canals, half of .99^19·.2 less.
    const upper = 1 - 0.99 ** 20 - (20 * 0.01 * 0.99 ** 19) / 2;
    expect(Math.abs(tailProbability(1, 20, 0.01).upper - upper)).toBeLessThan(1e-12);
  });

  test("is whole at x ≤ 0 and empty past n, also where a count is a small part of one.", () => {
    expect(tailProbability(0, 12, 0.3).upper).toBe(0.5 + (1 - 0.7 ** 12) / 2);
    expect(tailProbability(12, 12, 0.3).upper).toBeCloseTo(0.3 ** 12 / 2, 15);
    // Computed with R 4.2.2: (pbeta(.05, .005, 12.995) + pbeta(.05, 1.005, 11.995)) / 2.
    const small = tailProbability(0.005, 12, 0.05).upper;
    expect(Math.abs(small - 0.727511074837311)).toBeLessThan(1e-12);
  });

  test("tells nothing without units, or where theta leaves no other outcome.", () => {
    for (const [x, n, theta] of [
      [0, 0, 0.3],
      [0, 8, 0],
      [8, 8, 1],
    ] as const) {
      expect(tailProbability(x, n, theta)).toEqual({ upper: 0.5, lower: 0.5, p: 1 });
    }
    expect(tailProbability(1, 8, 0).p).toBe(0);
    expect(tailProbability(7, 8, 1).p).toBe(0);
  });

  const counts = fc
    .integer({ min: 1, max: 5_000 })
    .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  const theta = fc.double({ min: 0.001, max: 0.999, noNaN: true });

  test("changes sides when events and non-events change places.", () => {
    fc.assert(
      fc.property(counts, theta, ([x, n], at) => {
        const one = tailProbability(x, n, at);
        const other = tailProbability(n - x, n, 1 - at);
        expect(Math.abs(one.upper - other.lower)).toBeLessThan(1e-9);
        expect(Math.abs(one.p - other.p)).toBeLessThan(1e-9);
      }),
      { seed: 3 },
    );
  });

  test("shrinks above with every further event, and grows with theta.", () => {
    fc.assert(
      fc.property(counts, theta, theta, ([x, n], one, other) => {
        fc.pre(x < n);
        const { upper } = tailProbability(x, n, one);
        expect(tailProbability(x + 1, n, one).upper).toBeLessThanOrEqual(upper);
        const rising = [one, other].toSorted((a, b) => a - b) as [number, number];
        expect(tailProbability(x, n, rising[0]).upper).toBeLessThanOrEqual(
          tailProbability(x, n, rising[1]).upper + 1e-14,
        );
      }),
      { seed: 4 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const [x, n, at] of [
      [-0.005, 10, 0.1],
      [11, 10, 0.1],
      [Number.NaN, 10, 0.1],
      [1, Number.NaN, 0.1],
      [1, Number.POSITIVE_INFINITY, 0.1],
      [1, 10, -0.005],
      [1, 10, 1.005],
      [1, 10, Number.NaN],
    ] as const) {
      expect(() => tailProbability(x, n, at), `${x} of ${n} at ${at}`).toThrow(RangeError);
    }
  });
});
