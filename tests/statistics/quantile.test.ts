import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianInterval, quantile } from "@/lib/statistics/quantile";

// Without −0, which toEqual tells from 0.
const volume = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => value + 0);
const volumes = fc.array(volume, { minLength: 1, maxLength: 200 });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("The quantile", () => {
  test("agrees with numpy.quantile, type 7.", () => {
    // Computed with numpy.quantile([4.1, 0.3, 7.7, 2.2, 9.6, 5.5, 1.8], p).
    const values = [4.1, 0.3, 7.7, 2.2, 9.6, 5.5, 1.8];
    for (const [p, expected] of [
      [0.1, 1.2],
      [0.25, 2.0],
      [0.5, 4.1],
      [0.9, 8.46],
    ] as const) {
      expect(quantile(values, p)).toBeCloseTo(expected, 12);
    }
  });

  test("agrees with type 7 written out, to a relative 1e-12.", () => {
    fc.assert(
      fc.property(volumes, share, (values, p) => {
        const found = quantile(values, p) ?? Number.NaN;
        const scale = Math.max(...values.map(Math.abs), Number.MIN_VALUE);
        expect(Math.abs(found - plainTypeSeven(values, p))).toBeLessThanOrEqual(1e-12 * scale);
      }),
    );
  });

  test("does not depend on the order of the values, and leaves them as they are.", () => {
    fc.assert(
      fc.property(volumes, share, (values, p) => {
        const frozen = Object.freeze([...values]);
        expect(quantile(frozen, p)).toBe(quantile([...values].reverse(), p));
        expect(frozen).toEqual(values);
      }),
    );
  });

  test("runs from the smallest value to the largest and never turns back.", () => {
    fc.assert(
      fc.property(volumes, share, share, (values, one, other) => {
        expect(quantile(values, 0)).toBe(values.toSorted((a, b) => a - b)[0]);
        expect(quantile(values, 1)).toBe(values.toSorted((a, b) => a - b).at(-1));
        const low = quantile(values, Math.min(one, other)) ?? Number.NaN;
        const high = quantile(values, Math.max(one, other)) ?? Number.NaN;
        expect(low).toBeLessThanOrEqual(high + 1e-9);
      }),
    );
  });

  test("is the middle value, or half way between the middle two, at one half.", () => {
    expect(quantile([9, 1, 5], 0.5)).toBe(5);
    expect(quantile([9, 1, 5, 6], 0.5)).toBe(5.5);
    expect(quantile([10, 9, 100], 0.5)).toBe(10); // numbers, not words, are put in order
    expect(quantile([7], 0.3)).toBe(7);
  });

  test("does not exist without values.", () => {
    expect(quantile([], 0.5)).toBeUndefined();
  });

  test("is refused for values that are not finite and for shares outside [0, 1].", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => quantile([value, 1, 2], 0.5)).toThrow(RangeError);
    }
    for (const p of [1.005, -0.1, 1.1, 50, Number.NaN]) {
      expect(() => quantile([1, 2], p)).toThrow(RangeError);
      expect(() => quantile([], p)).toThrow(RangeError);
    }
  });
});

describe("The interval of a median", () => {
  test("is the 2nd and the 9th of ten values at 95 %, with its coverage.", () => {
    // Ranks from the printed sign-test tables (common practice); coverage 1 − 2·11/1024.
    expect(medianInterval([70, 20, 90, 10, 50, 40, 100, 30, 80, 60], 0.95)).toEqual({
      lower: 20,
      upper: 90,
      level: 0.95,
      method: "median-order-statistics",
      coverage: 1 - 22 / 1024,
    });
  });

  test("holds the median, does not depend on order, and leaves the values as they are.", () => {
    const many = fc.array(volume, { minLength: 6, maxLength: 200 });
    fc.assert(
      fc.property(many, (values) => {
        const frozen = Object.freeze([...values]);
        const found = medianInterval(frozen, 0.95);
        expect(found).toEqual(medianInterval([...values].reverse(), 0.95));
        expect(frozen).toEqual(values);
        const median = quantile(values, 0.5) ?? Number.NaN;
        expect(found?.lower).toBeLessThanOrEqual(median);
        expect(found?.upper).toBeGreaterThanOrEqual(median);
        expect(found?.coverage).toBeGreaterThanOrEqual(0.95);
      }),
    );
  });

  test("covers a known median at least as often as it says.", () => {
    // Values uniform on [0, 1) from a fixed seed, median ½; 12 values have coverage .9614.
    let state = 20_260_101;
    const next = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return state / 2 ** 32;
    };
    let covered = 0;
    for (let run = 0; run < 20_000; run += 1) {
      const found = medianInterval(Array.from({ length: 12 }, next), 0.95);
      if (found && found.lower <= 0.5 && found.upper >= 0.5) covered += 1;
    }
    // Four standard errors of 20,000 runs are .0055.
    expect(Math.abs(covered / 20_000 - (1 - (2 * 79) / 4096))).toBeLessThan(0.0055);
  });

  test("does not exist for five values or fewer at 95 %, nor for none.", () => {
    expect(medianInterval([1, 2, 3, 4, 5], 0.95)).toBeUndefined();
    expect(medianInterval([], 0.95)).toBeUndefined();
  });

  test("is refused for values that are not finite, even where it would not exist.", () => {
    expect(() => medianInterval([Number.NaN, 1, 2, 3, 4, 5, 6], 0.95)).toThrow(RangeError);
    expect(() => medianInterval([Number.NaN], 0.95)).toThrow(RangeError);
    expect(() => medianInterval([1, 2, 3], 0)).toThrow(RangeError);
  });
});

/** Type 7 as Hyndman & Fan 1996, Am Stat 50:361 define it: γ between x(j) and x(j + 1), 1-based. */
function plainTypeSeven(values: number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const position = 1 + (sorted.length - 1) * p;
  const j = Math.floor(position);
  const gamma = position - j;
  const at = (rank: number) => sorted[Math.min(rank, sorted.length) - 1] ?? Number.NaN;
  return (1 - gamma) * at(j) + gamma * at(j + 1);
}
