import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";

describe("The ranks that bound a median at 95 %", () => {
  // The table of sign-test intervals that textbooks of nonparametric statistics print (common
  // practice), e.g. n = 6: 1 − 2/64 = .969.
  for (const [n, lower, upper] of [
    [6, 1, 6],
    [8, 1, 8],
    [9, 2, 8],
    [10, 2, 9],
    [12, 3, 10],
    [15, 4, 12],
    [20, 6, 15],
  ] as const) {
    test(`are ${lower} and ${upper} for ${n} values.`, () => {
      expect(medianIntervalRanks(n, 0.95)).toMatchObject({ lower, upper });
    });
  }

  // Computed with scipy.stats.binom (SciPy 1.17.1): the largest k with
  // 1 - 2 * binom.cdf(k - 1, n, 0.5) >= 0.95.
  for (const [n, lower, upper, coverage] of [
    [1_000, 469, 532, 0.9537088026395019],
    [4_865, 2_364, 2_502, 0.9521396306941027],
    [1_000_000, 499_020, 500_981, 0.9501210313476314],
    [5_000_000, 2_497_809, 2_502_192, 0.9500202533157388],
  ] as const) {
    test(`and their coverage agree with SciPy for ${n} values.`, () => {
      const ranks = medianIntervalRanks(n, 0.95);
      expect(ranks).toMatchObject({ lower, upper });
      expect(Math.abs((ranks?.coverage ?? Number.NaN) - coverage)).toBeLessThan(1e-9);
    });
  }

  test("do not exist for five values or fewer.", () => {
    for (const n of [0, 1, 2, 3, 4, 5]) expect(medianIntervalRanks(n, 0.95)).toBeUndefined();
  });
});

describe("The search for the ranks", () => {
  test("takes a level that a pair of ranks exactly reaches, for every pair up to 50 values.", () => {
    let checked = 0;
    for (let n = 1; n <= 50; n += 1) {
      for (let rank = 1; rank <= n / 2; rank += 1) {
        // Exact: every sum of binomial coefficients here is a whole number under 2^53.
        const level = 1 - (2 * outside(rank, n)) / 2 ** n;
        expect(medianIntervalRanks(n, level), `${n} at ${level}`).toMatchObject({
          lower: rank,
          upper: n + 1 - rank,
        });
        checked += 1;
      }
    }
    expect(checked).toBe(625);
  });

  test("finds the largest rank that reaches the level, as a search one by one does.", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50 }),
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        (n, level) => {
          let expected: number | undefined;
          for (let rank = 1; rank <= n / 2; rank += 1) {
            if (1 - (2 * outside(rank, n)) / 2 ** n >= level) expected = rank;
          }
          expect(medianIntervalRanks(n, level)?.lower).toBe(expected);
        },
      ),
    );
  });

  test("gives ranks that mirror each other, reach the level, and move apart as it rises.", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 5_000_000 }),
        fc.double({ min: 0.5, max: 0.95, noNaN: true }),
        (n, level) => {
          const ranks = medianIntervalRanks(n, level);
          const wider = medianIntervalRanks(n, 0.999);
          if (ranks === undefined || wider === undefined) throw new Error("ranks were expected");
          expect(ranks.lower + ranks.upper).toBe(n + 1);
          expect(ranks.lower).toBeLessThan(ranks.upper);
          expect(ranks.coverage).toBeGreaterThanOrEqual(level - 1e-12);
          expect(wider.lower).toBeLessThan(ranks.lower);
        },
      ),
    );
  });

  test("refuses a count or a level that cannot be.", () => {
    for (const n of [-1, 2.5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => medianIntervalRanks(n, 0.95)).toThrow(RangeError);
    }
    for (const level of [0, 1, -1, 95, Number.NaN]) {
      expect(() => medianIntervalRanks(20, level)).toThrow(RangeError);
    }
  });
});

/** Of 2^n ways, those with fewer than `rank` values on one side of the median. */
function outside(rank: number, n: number): number {
  let ways = 1;
  let sum = 0;
  for (let below = 0; below < rank; below += 1) {
    sum += ways;
    ways = (ways * (n - below)) / (below + 1);
  }
  return sum;
}
