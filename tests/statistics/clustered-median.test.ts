import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tQuantileOf } from "@/lib/statistics/cluster-t-quantile";
import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { seededRandom } from "@/lib/statistics/seeded-random";

const uneven = [
  [12.5, 13, 18.25],
  [11, 9.5],
  [20, 22, 19, 21],
  [14],
  [16, 15.5, 17],
  [10, 12, 11.5],
  [24, 13.5],
  [18, 19.5, 8],
];
const even = Array.from({ length: 10 }, (_, at) => [at + 1, at + 11, at + 21]);
// 240 values, so many that a quantile just off the median counts another one.
const many = Array.from({ length: 80 }, (_, k) =>
  Array.from({ length: 1 + (k % 5) }, (_, j) => (k * 37 + j * 11) ** 2 % 1009),
);

describe("The interval of a clustered median", () => {
  // Computed with R 4.2.2 by the docstring's formulas: V <- K/(K-1) * sum((e - F*n)^2)/N^2, s <- qt((1 - L)/2, K - 1,
  // lower.tail = FALSE) * sqrt(max(V, F*(1 - F)/N)), quantile(values, .5 - s) and .5 + s. (The t quantile of
  // SciPy 1.10.1 is good to 1e-9 only, too coarse to stand here.) The even clusters rest on the floor F(1 − F)/n.
  for (const [name, clusters, level, lower, upper, designEffect] of [
    ["uneven", uneven, 0.95, 11.010427458440883, 19.989572541559117, 1.8335188620902907],
    ["uneven", uneven, 0.9, 11.704093008141067, 19.295906991858935, 1.8335188620902907],
    ["many", many, 0.95, 400.2218707340529, 564.3343877978413, 1.2827004219409284],
    ["even", even, 0.95, 9.511333217682095, 21.488666782317903, 0.37037037037037035],
    ["even", even, 0.9, 10.647153032260364, 20.352846967739637, 0.37037037037037035],
  ] as const) {
    test(`agrees with R on ${name} clusters at ${level}.`, () => {
      const found = clusteredMedianInterval(clusters, level);
      expect(found).toMatchObject({ level, method: "woodruff" });
      expect(Math.abs((found?.lower ?? 0) - lower)).toBeLessThan(1e-9);
      expect(Math.abs((found?.upper ?? 0) - upper)).toBeLessThan(1e-9);
      expect(Math.abs((found?.designEffect ?? 0) - designEffect)).toBeLessThan(1e-9);
    });
  }

  test("does not exist for no values, one cluster, or none above the median.", () => {
    for (const clusters of [
      [],
      [[]],
      [[1, 2, 3, 4]],
      [[1, 2, 3], []],
      [
        [2, 2],
        [2, 2, 2],
        [1, 2],
      ],
    ]) {
      expect(clusteredMedianInterval(clusters, 0.95)).toBeUndefined();
    }
    expect(
      clusteredMedianInterval(
        [
          [1, 3, 5, 7, 9],
          [2, 4, 6, 8],
        ],
        0.3,
      ),
    ).toBeDefined();
  });

  test("exists up to where ½ ± t·√v leaves the range, and not from there on.", () => {
    // The even clusters: √v is √(¼/30), so the span reaches its end at t = √30.
    const at = (span: number) =>
      clusteredMedianInterval(even, levelOf(span / Math.sqrt(0.25 / 30)));
    expect(at(0.4999)?.lower).toBeCloseTo(1 + 29 * 0.0001, 6);
    expect(at(0.4999)?.upper).toBeCloseTo(30 - 29 * 0.0001, 6);
    for (const span of [0.5001, 0.502, 0.6]) expect(at(span)).toBeUndefined();
  });

  const values = fc.array(fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 5 }), {
    minLength: 2,
    maxLength: 20,
  });

  test("rises and stretches with the values, in any order, and leaves its input.", () => {
    fc.assert(
      fc.property(values, (clusters) => {
        const frozen = Object.freeze(clusters.map((one) => Object.freeze(one)));
        const found = clusteredMedianInterval(frozen, 0.8);
        const turned = frozen.toReversed().map((one) => one.toReversed());
        expect(clusteredMedianInterval(turned, 0.8)).toEqual(found);
        const doubled = clusteredMedianInterval(
          frozen.map((one) => one.map((value) => 2 * value + 7)),
          0.8,
        );
        if (found === undefined) {
          expect(doubled).toBeUndefined();
          return;
        }
        expect(doubled?.lower).toBeCloseTo(2 * found.lower + 7, 9);
        expect(doubled?.upper).toBeCloseTo(2 * found.upper + 7, 9);
        expect(doubled?.designEffect).toBe(found.designEffect);
        const wider = clusteredMedianInterval(frozen, 0.9);
        if (wider) expect(wider.lower <= found.lower && found.upper <= wider.upper).toBe(true);
      }),
      { seed: 37 },
    );
  });

  test("covers what it says in 600 simulated audits of 40 patients.", () => {
    const random = seededRandom(38);
    let covered = 0;
    for (let audit = 0; audit < 600; audit += 1) {
      // Patient and tooth weigh alike; both are symmetric around 0, so the median is 0.
      const patients = Array.from({ length: 40 }, () => {
        const patient = random() - 0.5;
        return Array.from({ length: 1 + Math.floor(random() * 5) }, () => patient + random() - 0.5);
      });
      const found = clusteredMedianInterval(patients, 0.95);
      if (found && found.lower <= 0 && 0 <= found.upper) covered += 1;
    }
    expect(covered / 600).toBeGreaterThan(0.93);
    expect(covered / 600).toBeLessThan(0.98);
  });

  test("refuses what cannot be.", () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => clusteredMedianInterval([[1, value], [2]], 0.95)).toThrow(RangeError);
    }
    for (const level of [0, 1, Number.NaN]) {
      expect(() => clusteredMedianInterval([], level)).toThrow(RangeError);
    }
  });
});

/** The level at which ten clusters reach so many standard errors, by halving. */
function levelOf(reach: number): number {
  let [low, high] = [0.5, 1 - 1e-9];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if ((tQuantileOf(10, middle) as number) < reach) low = middle;
    else high = middle;
  }
  return low;
}
