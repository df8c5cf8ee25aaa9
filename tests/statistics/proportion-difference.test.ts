import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { miettinenNurminen, newcombe } from "@/lib/statistics/proportion-difference";

type Table = readonly [x1: number, n1: number, x2: number, n2: number];
const methods = { newcombe, miettinenNurminen };

// Newcombe 1998, Stat Med 17:873, method 10, 95 %, printed to four decimals.
const newcombe1998: [Table, number[]][] = [
  [
    [56, 70, 48, 80],
    [0.0524, 0.3339],
  ],
  [
    [9, 10, 3, 10],
    [0.1705, 0.809],
  ],
  [
    [5, 56, 0, 29],
    [-0.0381, 0.1926],
  ],
  [
    [0, 10, 0, 20],
    [-0.1611, 0.2775],
  ],
];

describe("Newcombe 1998, Stat Med 17:873, method 10 is met to its four decimals", () => {
  for (const [table, ends] of newcombe1998) {
    test(`for ${name(table)}.`, () => {
      expect(toFourDecimals(newcombe(...table, 0.95))).toEqual(ends);
    });
  }
});

test("Fagerland 2015, 7/34 against 1/34, is met to four decimals by both methods.", () => {
  expect(toFourDecimals(newcombe(7, 34, 1, 34, 0.95))).toEqual([0.0189, 0.3404]);
  expect(toFourDecimals(miettinenNurminen(7, 34, 1, 34, 0.95))).toEqual([0.027, 0.3453]);
});

// Newcombe computed with statsmodels 0.15.0, confint_proportions_2indep(…, method="newcomb").
// Miettinen–Nurminen computed with mpmath at 40 digits: the likeliest pair from polyroots of their
// cubic, the ends by bisection. The score interval of statsmodels differs from these in the third
// or fourth decimal, so it is not used as a reference.
const computed: [Table, number[], number[]][] = [
  [
    [56, 70, 48, 80],
    [0.05243147240236498, 0.33387265403690614],
    [0.0528297132458446, 0.338172940015868],
  ],
  [
    [9, 10, 3, 10],
    [0.1705227239345029, 0.809017973535488],
    [0.170025016424399, 0.840649543943328],
  ],
  [
    [5, 56, 0, 29],
    [-0.038137147903536936, 0.19256001385511165],
    [-0.0325965617435138, 0.193330976690881],
  ],
  [
    [0, 10, 0, 20],
    [-0.1611251580528194, 0.27753279986288926],
    [-0.165760227542172, 0.284381339534377],
  ],
  [
    [7, 34, 1, 34],
    [0.018921443885772937, 0.3403686870327074],
    [0.0270416265834468, 0.345291216966224],
  ],
  [
    [12, 4865, 26, 1403],
    [-0.024614001173634437, -0.009928555769026246],
    [-0.0246353105361763, -0.00999051076723629],
  ],
];

describe("Independent computations are met to 1e-9", () => {
  for (const [table, byNewcombe, byMiettinenNurminen] of computed) {
    test(`for ${name(table)} by both methods.`, () => {
      expectEnds(newcombe(...table, 0.95), byNewcombe);
      expectEnds(miettinenNurminen(...table, 0.95), byMiettinenNurminen);
    });
  }
});

const group = fc
  .integer({ min: 1, max: 2_000 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });

for (const [method, interval] of Object.entries(methods)) {
  const ends = (...given: Parameters<typeof newcombe>) => {
    const found = interval(...given);
    if (found === undefined) throw new Error("an interval was expected");
    return found;
  };

  describe(`The interval of a difference by ${method}`, () => {
    test("turns its sign when the groups change places.", () => {
      fc.assert(
        fc.property(group, group, level, ([x1, n1], [x2, n2], at) => {
          const found = ends(x1, n1, x2, n2, at);
          const swapped = ends(x2, n2, x1, n1, at);
          expect(Math.abs(found.lower + swapped.upper)).toBeLessThan(1e-9);
          expect(Math.abs(found.upper + swapped.lower)).toBeLessThan(1e-9);
        }),
      );
    });

    test("holds the difference seen, has width and never leaves [−1, 1].", () => {
      fc.assert(
        fc.property(group, group, level, ([x1, n1], [x2, n2], at) => {
          const found = ends(x1, n1, x2, n2, at);
          const seen = x1 / n1 - x2 / n2;
          expect(found.lower).toBeLessThanOrEqual(seen);
          expect(found.upper).toBeGreaterThanOrEqual(seen);
          expect(found.upper).toBeGreaterThan(found.lower);
          expect(found.lower).toBeGreaterThanOrEqual(-1);
          expect(found.upper).toBeLessThanOrEqual(1);
        }),
      );
    });

    test("widens on both sides as the level rises.", () => {
      fc.assert(
        fc.property(group, group, level, level, ([x1, n1], [x2, n2], one, other) => {
          const narrow = ends(x1, n1, x2, n2, Math.min(one, other));
          const wide = ends(x1, n1, x2, n2, Math.max(one, other));
          expect(wide.lower).toBeLessThanOrEqual(narrow.lower + 1e-12);
          expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper - 1e-12);
        }),
      );
    });

    test("ends exactly at 1 or −1 when all of one group and none of the other had the event.", () => {
      expect(ends(10, 10, 0, 7, 0.95).upper).toBe(1);
      expect(ends(0, 10, 7, 7, 0.95).lower).toBe(-1);
    });

    test("does not exist where a group has no units.", () => {
      expect(interval(0, 0, 1, 5, 0.95)).toBeUndefined();
      expect(interval(1, 5, 0, 0, 0.95)).toBeUndefined();
    });

    test("is refused for counts and levels that cannot be.", () => {
      expect(() => interval(6, 5, 1, 5, 0.95)).toThrow(RangeError);
      expect(() => interval(1, 5, 6, 5, 0.95)).toThrow(RangeError);
      expect(() => interval(-1, 5, 1, 5, 0.95)).toThrow(RangeError);
      expect(() => interval(1, 5, 1.5, 5, 0.95)).toThrow(RangeError);
      expect(() => interval(1, 5, 1, Number.NaN, 0.95)).toThrow(RangeError);
      expect(() => interval(1, 5, 1, 5, 1)).toThrow(RangeError);
      expect(() => interval(0, 0, 6, 5, 0.95)).toThrow(RangeError);
    });
  });
}

function name([x1, n1, x2, n2]: Table): string {
  return `${x1}/${n1} against ${x2}/${n2}`;
}

type EndsOrNone = { lower: number; upper: number } | undefined;

function toFourDecimals(ends: EndsOrNone): number[] {
  return [ends?.lower, ends?.upper].map((end) => Number((end ?? Number.NaN).toFixed(4)));
}

function expectEnds(ends: EndsOrNone, expected: number[]): void {
  [ends?.lower, ends?.upper].forEach((end, i) => {
    expect(Math.abs((end ?? Number.NaN) - (expected[i] ?? Number.NaN))).toBeLessThan(1e-9);
  });
}
