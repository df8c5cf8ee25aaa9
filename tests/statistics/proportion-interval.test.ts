import { describe, expect, test } from "vitest";
import {
  clopperPearson,
  jeffreys,
  midP,
  wilson,
  wilsonEnds,
} from "@/lib/statistics/proportion-interval";

// Newcombe 1998, Stat Med 17:857, table I, 95 %: methods 3, 5 and 6, printed to four decimals.
const newcombe1998 = [
  { x: 81, n: 263, wilson: [0.2553, 0.3662], exact: [0.2527, 0.3676], midP: [0.2544, 0.3658] },
  { x: 15, n: 148, wilson: [0.0624, 0.1605], exact: [0.0578, 0.1617], midP: [0.0601, 0.1581] },
  { x: 0, n: 20, wilson: [0, 0.1611], exact: [0, 0.1684], midP: [0, 0.1391] },
  { x: 1, n: 29, wilson: [0.0061, 0.1718], exact: [0.0009, 0.1776], midP: [0.0017, 0.1585] },
];

describe("Newcombe 1998, Stat Med 17:857, table I is met to its four decimals", () => {
  for (const row of newcombe1998) {
    test(`for ${row.x} of ${row.n} by Wilson, Clopper–Pearson and mid-P.`, () => {
      expect(toFourDecimals(wilson(row.x, row.n, 0.95))).toEqual(row.wilson);
      expect(toFourDecimals(clopperPearson(row.x, row.n, 0.95))).toEqual(row.exact);
      expect(toFourDecimals(midP(row.x, row.n, 0.95))).toEqual(row.midP);
    });
  }
});

// Computed with Python, SciPy 1.17.1 and statsmodels 0.15.0:
//   proportion_confint(x, n, 1 - level, "wilson" | "beta" | "jeffreys"), and for mid-P
//   scipy.optimize.brentq over binom.sf(x, n, p) + binom.pmf(x, n, p) / 2 - (1 - level) / 2,
//   binom.cdf(x - 1, …) for the upper end, xtol=1e-15.
// At 0 of 20 the lower end of Jeffreys is set to 0, which that package leaves at 2.4e-5.
const computed = [
  {
    x: 81,
    n: 263,
    level: 0.95,
    wilson: [0.2552885198782742, 0.36620957698280004],
    exact: [0.25273674558527126, 0.36762192260135135],
    jeffreys: [0.2545219349910236, 0.36564749917408246],
    midP: [0.25440210494552234, 0.3657734742577772],
  },
  {
    x: 1,
    n: 29,
    level: 0.998,
    wilson: [0.003016001358716963, 0.29658645803642136],
    exact: [3.449941638432753e-5, 0.276881913578025],
    jeffreys: [0.00042250418660044373, 0.246455232438646],
    midP: [6.896555853452603e-5, 0.2595150673856818],
  },
  {
    x: 12,
    n: 4865,
    level: 0.95,
    wilson: [0.0014115928283859704, 0.0043066995120341145],
    exact: [0.0012751565439377704, 0.004304682365395539],
    jeffreys: [0.0013490635080691418, 0.004173649819441449],
    midP: [0.001337119943820591, 0.004189612151096462],
  },
  {
    x: 0,
    n: 20,
    level: 0.95,
    wilson: [0, 0.16112515805281938],
    exact: [0, 0.1684334709830853],
    jeffreys: [0, 0.11663898290487539],
    midP: [0, 0.139108340668265],
  },
  {
    x: 7,
    n: 1_000_000,
    level: 0.95,
    wilson: [3.390867834900857e-6, 1.4450522448827192e-5],
    exact: [2.8143675343022212e-6, 1.4422621834331028e-5],
    jeffreys: [3.131074171715512e-6, 1.3744146648938873e-5],
    midP: [3.0615941036339685e-6, 1.384704696691487e-5],
  },
];

describe("SciPy and statsmodels are met to a relative 1e-9", () => {
  for (const row of computed) {
    test(`for ${row.x} of ${row.n} at ${row.level} by all four methods.`, () => {
      expectEnds(wilson(row.x, row.n, row.level), row.wilson);
      expectEnds(clopperPearson(row.x, row.n, row.level), row.exact);
      expectEnds(jeffreys(row.x, row.n, row.level), row.jeffreys);
      expectEnds(midP(row.x, row.n, row.level), row.midP);
    });
  }
});

describe("The rule of three", () => {
  test("has its exact one-sided 95 % upper limit at .00994 for none of 300.", () => {
    // Computed: 1 − 0.05^(1/300). The upper end of a two-sided 90 % interval is the one-sided 95 % limit.
    expect(toFourDecimals(clopperPearson(0, 300, 0.9))[1]).toBe(0.0099);
    expect(clopperPearson(0, 300, 0.9)?.upper).toBeCloseTo(0.00994, 5);
  });

  test("lies just above that limit, as three over the units.", () => {
    // From memory (Hanley & Lippman-Hand 1983, JAMA 249:1743): 3/n approximates the exact limit from above.
    const exact = clopperPearson(0, 300, 0.9)?.upper ?? Number.NaN;
    expect(3 / 300).toBeGreaterThan(exact);
    expect(3 / 300 - exact).toBeLessThan(1e-4);
  });

  test("asks for 299, 149, 99 and 59 units to stay below 1, 2, 3 and 5 %.", () => {
    // Computed: the least n with 0.05^(1/n) over 1 − rate.
    for (const [rate, units] of [
      [0.01, 299],
      [0.02, 149],
      [0.03, 99],
      [0.05, 59],
    ] as const) {
      expect(clopperPearson(0, units, 0.9)?.upper).toBeLessThan(rate);
      expect(clopperPearson(0, units - 1, 0.9)?.upper).toBeGreaterThan(rate);
    }
  });
});

describe("What has no interval, and what cannot be", () => {
  const methods = { wilson, clopperPearson, midP, jeffreys };

  for (const [name, method] of Object.entries(methods)) {
    test(`${name} has no interval without units.`, () => {
      expect(method(0, 0, 0.95)).toBeUndefined();
    });

    test(`${name} names its level and its method.`, () => {
      const kebab = name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
      expect(method(3, 9, 0.9)).toMatchObject({ level: 0.9, method: kebab });
    });

    test(`${name} refuses counts and levels that cannot be.`, () => {
      for (const [x, n] of [
        [5, 4],
        [-1, 4],
        [0, -4],
        [1.5, 4],
        [1, 4.5],
        [Number.NaN, 4],
        [1, Number.NaN],
        [1, Number.POSITIVE_INFINITY],
        [1, 0],
      ] as const) {
        expect(() => method(x, n, 0.95), `${x} of ${n}`).toThrow(RangeError);
      }
      for (const level of [0, 1, -0.5, 1.5, 95, Number.NaN]) {
        expect(() => method(1, 4, level), `level ${level}`).toThrow(RangeError);
      }
      expect(() => method(0, 0, 2)).toThrow(RangeError);
    });
  }

  test("the inner Wilson form takes units that are not whole, and refuses what cannot be.", () => {
    const whole = wilson(15, 148, 0.95);
    const inner = wilsonEnds(15 / 148, 148, 1.959963984540054);
    expect(inner.lower).toBeCloseTo(whole?.lower ?? Number.NaN, 12);
    expect(inner.upper).toBeCloseTo(whole?.upper ?? Number.NaN, 12);
    expect(wilsonEnds(0.1, 100.5, 2).upper).toBeLessThan(wilsonEnds(0.1, 100, 2).upper);
    for (const [p, n, q] of [
      [-0.1, 10, 2],
      [1.1, 10, 2],
      [Number.NaN, 10, 2],
      [0.5, 0, 2],
      [0.5, Number.POSITIVE_INFINITY, 2],
      [0.5, 10, -2],
      [0.5, 10, Number.NaN],
    ] as const) {
      expect(() => wilsonEnds(p, n, q)).toThrow(RangeError);
    }
  });
});

type EndsOrNone = { lower: number; upper: number } | undefined;

function toFourDecimals(ends: EndsOrNone): number[] {
  return [ends?.lower, ends?.upper].map((end) => Number((end ?? Number.NaN).toFixed(4)));
}

function expectEnds(ends: EndsOrNone, expected: number[]): void {
  const found = [ends?.lower ?? Number.NaN, ends?.upper ?? Number.NaN];
  found.forEach((end, i) => {
    const value = expected[i] ?? Number.NaN;
    expect(Math.abs(end - value)).toBeLessThanOrEqual(1e-9 * value);
  });
}
