import hypergeometricCdf from "@stdlib/stats-base-dists-hypergeometric-cdf";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hypergeometricInterval, sampleSize } from "@/lib/statistics/audit-sample";

describe("The size of an audit sample", () => {
  test("agrees with the worked examples: 178.61 is 179, and 64.", () => {
    // Published values as quoted in the notes on statistics, by Cochran's formula with z = 1.96.
    expect(sampleSize(400, 0.7, 0.05, 0.95)).toBe(179);
    expect(sampleSize(500, 0.05, 0.05, 0.95)).toBe(64);
  });

  // Computed with R 4.2.2: n0 <- qnorm((1 + level) / 2)^2 * p * (1 - p) / d^2; n0 / (1 + n0 / N), rounded up. Large
  // populations, so that rounding up hides little.
  for (const [population, p, margin, level, size] of [
    [1_000_000_000, 0.3, 0.0005, 0.95, 3_216_447],
    [2_000_000, 0.5, 0.001, 0.95, 648_816],
    [100_000, 0.02, 0.004, 0.95, 4_495],
    [10_000, 0.5, 0.03, 0.9, 700],
  ] as const) {
    test(`agrees with R for ${p} ± ${margin} of ${population} at ${level}.`, () => {
      expect(sampleSize(population, p, margin, level)).toBe(size);
    });
  }

  test("is 0 where there is nothing to look at, or nothing to vary.", () => {
    expect(sampleSize(0, 0.5, 0.05, 0.95)).toBe(0);
    expect(sampleSize(0, 0, 0.05, 0.95)).toBe(0);
    expect(sampleSize(80, 0, 0.05, 0.95)).toBe(0);
    expect(sampleSize(80, 1, 0.05, 0.95)).toBe(0);
    expect(sampleSize(80, 0.5, 0.005, 0.95)).toBe(80);
  });

  test("keeps its margin: 179 of 400 records come within 5 % of 280 in 95 of 100 samples, or nearly.", () => {
    // 125.3 ± 8.95 of 179: from 117 to 134 found.
    const inside = hypergeometricCdf(134, 400, 280, 179) - hypergeometricCdf(116, 400, 280, 179);
    expect(inside).toBeGreaterThan(0.94);
    expect(inside).toBeLessThan(0.96);
  });

  test("never exceeds the population, grows with it, and is the same for p and 1 − p.", () => {
    const args = fc.tuple(
      fc.integer({ min: 1, max: 5_000 }),
      fc.integer({ min: 1, max: 64 }),
      fc.double({ min: 0.01, max: 0.3, noNaN: true }),
    );
    fc.assert(
      fc.property(args, ([population, part, margin]) => {
        const size = sampleSize(population, part / 128, margin, 0.95);
        expect(size).toBeLessThanOrEqual(population);
        expect(size).toBeGreaterThan(0);
        expect(sampleSize(population + 100, part / 128, margin, 0.95)).toBeGreaterThanOrEqual(size);
        expect(sampleSize(population, 1 - part / 128, margin, 0.95)).toBe(size);
        expect(sampleSize(population, 0.5, margin, 0.95)).toBeGreaterThanOrEqual(size);
      }),
      { seed: 51 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const [population, p, margin, level] of [
      [-1, 0.5, 0.05, 0.95],
      [1.5, 0.5, 0.05, 0.95],
      [9, -0.005, 0.05, 0.95],
      [9, 1.005, 0.05, 0.95],
      [9, 0.5, 0, 0.95],
      [0, 0.5, -1, 0.95],
      [9, 0.5, Number.NaN, 0.95],
      [9, 0.5, Number.POSITIVE_INFINITY, 0.95],
      [9, 0.5, 0.05, 1],
      [9, 0.5, 0.05, 0],
    ] as const) {
      expect(() => sampleSize(population, p, margin, level)).toThrow(RangeError);
    }
  });
});

describe("The interval of a count in a population sampled", () => {
  // Computed with R 4.2.2, over every possible M: range(M[1 - phyper(m - 1, M, N - M, n) > a & phyper(m, M, N - M, n) > a])
  // with a <- (1 - level) / 2.
  for (const [m, n, population, level, lower, upper] of [
    [0, 64, 500, 0.95, 0, 26],
    [3, 64, 500, 0.95, 6, 62],
    [64, 64, 500, 0.95, 474, 500],
    [125, 179, 400, 0.95, 258, 299],
    [5, 20, 20, 0.95, 5, 5],
    [0, 0, 12, 0.95, 0, 12],
    [2, 10, 60, 0.9, 3, 29],
    [2, 10, 60, 0.99, 2, 36],
    [3, 10, 50, 0.95, 5, 31],
    [0, 0, 0, 0.95, 0, 0],
    [1, 64, 500, 0.95, 1, 39],
    [300, 2_000, 20_000, 0.95, 2_708, 3_311],
    [1_500, 10_000, 200_000, 0.95, 28_646, 31_393],
    [1_500, 10_000, 200_000, 0.9, 28_860, 31_169],
  ] as const) {
    test(`agrees with R for ${m} of ${n} looked at among ${population} at ${level}.`, () => {
      expect(hypergeometricInterval(m, n, population, level)).toEqual({ lower, upper });
    });
  }

  test("covers at least what it says, whatever the truth, summed over every sample.", () => {
    for (const [n, population] of [
      [10, 60],
      [25, 40],
    ] as const) {
      const known = Array.from({ length: n + 1 }, (_, m) =>
        hypergeometricInterval(m, n, population, 0.95),
      );
      for (let truth = 0; truth <= population; truth += 1) {
        const chance = (m: number) => {
          const below = m === 0 ? 0 : hypergeometricCdf(m - 1, population, truth, n);
          return hypergeometricCdf(m, population, truth, n) - below;
        };
        const covered = known.reduce(
          (sum, { lower, upper }, m) => sum + (lower <= truth && truth <= upper ? chance(m) : 0),
          0,
        );
        expect(covered, `${truth} of ${population}`).toBeGreaterThanOrEqual(0.95 - 1e-12);
      }
    }
  });

  const sampled = fc
    .integer({ min: 0, max: 200 })
    .chain((population) =>
      fc
        .integer({ min: 0, max: population })
        .chain((n) =>
          fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n), fc.constant(population)),
        ),
    );

  test("mirrors, rises with every one found, and holds only counts that can be.", () => {
    fc.assert(
      fc.property(sampled, ([m, n, population]) => {
        // At 95 % a tail can come out at exactly .025 (1 of 200 looked at, 5 with the property): a tie is no win.
        const found = hypergeometricInterval(m, n, population, 0.95);
        expect(found.lower).toBeGreaterThanOrEqual(m);
        expect(found.upper).toBeLessThanOrEqual(population - (n - m));
        expect(found.lower).toBeLessThanOrEqual(found.upper);
        expect(hypergeometricInterval(n - m, n, population, 0.95)).toEqual({
          lower: population - found.upper,
          upper: population - found.lower,
        });
        if (m === n) return;
        const more = hypergeometricInterval(m + 1, n, population, 0.95);
        expect(more.lower >= found.lower && more.upper >= found.upper).toBe(true);
      }),
      { seed: 52 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const [m, n, population, level] of [
      [11, 10, 60, 0.95],
      [-1, 10, 60, 0.95],
      [0.5, 10, 60, 0.95],
      [1, 61, 60, 0.95],
      [1, 10, Number.NaN, 0.95],
      [1, 10, 60, 1],
    ] as const) {
      expect(() => hypergeometricInterval(m, n, population, level)).toThrow(RangeError);
    }
  });
});
