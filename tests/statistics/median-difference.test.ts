import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianDifference, medianDifferenceOf } from "@/lib/statistics/median-difference";
import { seededRandom } from "@/lib/statistics/seeded-random";

const a = [
  [12.5, 13, 18.25],
  [11, 9.5],
  [20, 22, 19, 21],
  [14],
  [16, 15.5, 17],
  [10, 12, 11.5],
  [24, 13.5],
  [18, 19.5, 8],
];
const b = [[22, 25.5], [17, 19, 30], [28, 27], [21.5, 24, 26], [16, 33], [29], [20.5, 23, 18]];

// Computed with R 4.2.2 as in clustered-median.test.ts.
const endsOf = {
  "0.95": {
    a: [11.010427458440883, 19.989572541559117],
    b: [18.54443711902134, 28.45556288097866],
  },
  "0.9": {
    a: [11.704093008141067, 19.295906991858935],
    b: [19.846915221119158, 27.435389852587228],
  },
} as const;

describe("The difference of two clustered medians", () => {
  for (const level of [0.95, 0.9] as const) {
    test(`is that of b less a, squared and added, at ${level}.`, () => {
      const found = medianDifference(a, b, level);
      const ends = endsOf[`${level}`];
      // Medians by R's median: 15.5 and 23.5. Zou & Donner 2008, Stat Med 27:1693.
      expect(found?.estimate).toBe(8);
      const lower = 8 - Math.sqrt((23.5 - ends.b[0]) ** 2 + (ends.a[1] - 15.5) ** 2);
      const upper = 8 + Math.sqrt((ends.b[1] - 23.5) ** 2 + (15.5 - ends.a[0]) ** 2);
      expect(Math.abs((found?.interval?.lower ?? 0) - lower)).toBeLessThan(1e-9);
      expect(Math.abs((found?.interval?.upper ?? 0) - upper)).toBeLessThan(1e-9);
      expect(found?.interval).toMatchObject({ level, method: "median-difference" });
    });
  }

  test("is nothing without values, and has no interval where a median has none.", () => {
    expect(medianDifference([], b, 0.95)).toBeUndefined();
    expect(medianDifference(a, [[]], 0.95)).toBeUndefined();
    const lone = [[1, 2, 3, 10]];
    expect(medianDifference(lone, b, 0.95)).toEqual({ estimate: 21, interval: undefined });
    expect(medianDifference(a, lone, 0.95)).toEqual({ estimate: -13, interval: undefined });
  });

  test("from ends takes each on its own side.", () => {
    const found = medianDifferenceOf(
      { lower: 9, estimate: 10, upper: 14 },
      { lower: 17, estimate: 20, upper: 25 },
      0.95,
    );
    // Computed by hand: 10 − √(3² + 4²), 10 + √(5² + 1²).
    expect(found.estimate).toBe(10);
    expect(found.interval.lower).toBeCloseTo(5, 12);
    expect(found.interval.upper).toBeCloseTo(10 + Math.sqrt(26), 12);
    const point = { lower: 3, estimate: 3, upper: 3 };
    expect(medianDifferenceOf(point, point, 0.5).interval).toMatchObject({ lower: 0, upper: 0 });
  });

  const group = fc.array(fc.array(fc.integer({ min: 0, max: 90 }), { maxLength: 4 }), {
    minLength: 2,
    maxLength: 15,
  });

  test("changes sign and sides when the groups change places, and leaves them.", () => {
    fc.assert(
      fc.property(group, group, (one, other) => {
        const [first, second] = [one, other].map((all) =>
          Object.freeze(all.map((each) => Object.freeze(each))),
        ) as [number[][], number[][]];
        const found = medianDifference(first, second, 0.8);
        const turned = medianDifference(second, first, 0.8);
        if (!found) {
          expect(turned).toBeUndefined();
          return;
        }
        expect(turned?.estimate).toBe(0 - found.estimate);
        if (!found.interval) {
          expect(turned?.interval).toBeUndefined();
          return;
        }
        expect(turned?.interval?.lower).toBeCloseTo(-found.interval.upper, 9);
        expect(turned?.interval?.upper).toBeCloseTo(-found.interval.lower, 9);
      }),
      { seed: 39 },
    );
  });

  test("covers what it says in 300 simulated pairs of 30 and 40 patients.", () => {
    const random = seededRandom(40);
    const patients = (count: number, median: number) =>
      Array.from({ length: count }, () => {
        const centre = median + random() - 0.5;
        return Array.from({ length: 1 + Math.floor(random() * 4) }, () => centre + random() - 0.5);
      });
    let covered = 0;
    for (let pair = 0; pair < 300; pair += 1) {
      const found = medianDifference(patients(30, 2), patients(40, 5), 0.95)?.interval;
      if (found && found.lower <= 3 && 3 <= found.upper) covered += 1;
    }
    expect(covered / 300).toBeGreaterThan(0.92);
    expect(covered / 300).toBeLessThan(0.99);
  });

  test("refuses what cannot be.", () => {
    const sound = { lower: 1, estimate: 2, upper: 3 };
    for (const wrong of [
      { lower: 2.01 },
      { upper: 1.99 },
      { estimate: Number.NaN },
      { upper: Number.POSITIVE_INFINITY },
    ]) {
      expect(() => medianDifferenceOf({ ...sound, ...wrong }, sound, 0.95)).toThrow(RangeError);
      expect(() => medianDifferenceOf(sound, { ...sound, ...wrong }, 0.95)).toThrow(RangeError);
    }
    expect(() => medianDifferenceOf(sound, sound, 1)).toThrow(RangeError);
    expect(() => medianDifference([], [], 1)).toThrow(RangeError);
    expect(() => medianDifference([[1, Number.NaN]], b, 0.95)).toThrow(RangeError);
  });
});
