import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { poissonExact, poissonMidP } from "@/lib/statistics/rate-interval";

describe("The exact interval of a rate", () => {
  // Published: Garwood 1936, Biometrika 28:437; Ulm 1990, Am J Epidemiol 131:373, 95 %.
  for (const [events, lower, upper] of [
    [0, 0, 3.6889],
    [1, 0.0253, 5.5716],
    [5, 1.6235, 11.6683],
    [10, 4.7954, 18.3904],
  ] as const) {
    test(`agrees with Garwood's table for ${events} events.`, () => {
      const found = poissonExact(events, 1, 0.95);
      expect(found?.lower).toBeCloseTo(lower, 4);
      expect(found?.upper).toBeCloseTo(upper, 4);
    });
  }

  // Computed with R 4.2.2: qgamma((1 - level) / 2, x) / t and qgamma((1 + level) / 2, x + 1) / t.
  for (const [events, exposure, level, lower, upper] of [
    [0, 400, 0.95, 0, 0.009222198635284838],
    [1, 1, 0.95, 0.025317807984289897, 5.571643390938899],
    [3, 12.5, 0.99, 0.027029071098218664, 0.8781981996263812],
    [15, 400, 0.95, 0.020988465331958285, 0.061850547178714604],
    [100, 1, 0.9, 84.13927721831418, 118.07927278209708],
  ] as const) {
    test(`agrees with R for ${events} in ${exposure} at ${level}.`, () => {
      expectEnds(poissonExact(events, exposure, level), lower, upper);
      expect(poissonExact(events, exposure, level)).toMatchObject({
        level,
        method: "poisson-exact",
      });
    });
  }
});

describe("The mid-P interval of a rate", () => {
  // Computed with R 4.2.2: uniroot over ppois(x, m, lower.tail = FALSE) + dpois(x, m) / 2. At no events the upper end
  // is −ln(.05) at 95 %.
  for (const [events, exposure, level, lower, upper] of [
    [0, 1, 0.95, 0, -Math.log(0.05)],
    [1, 1, 0.95, 0.050020344835335705, 4.931860524706777],
    [1, 1, 0.999, 0.0010000001665834415, 9.335713508320122],
    [5, 1, 0.95, 1.8319948085284163, 11.082415664992014],
    [10, 4, 0.95, 5.079521847217341 / 4, 17.82485369656968 / 4],
    [15, 1, 0.95, 8.716054631639034, 24.184963868116757],
  ] as const) {
    test(`agrees with R for ${events} in ${exposure} at ${level}.`, () => {
      expectEnds(poissonMidP(events, exposure, level), lower, upper);
      expect(poissonMidP(events, exposure, level)).toMatchObject({
        level,
        method: "poisson-mid-p",
      });
    });
  }

  test("lies within the exact one.", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (events, level) => {
          const [inner, outer] = [poissonMidP(events, 1, level), poissonExact(events, 1, level)];
          expect(inner?.upper).toBeLessThan(outer?.upper as number);
          if (events > 0) expect(inner?.lower).toBeGreaterThan(outer?.lower as number);
        },
      ),
      { seed: 41 },
    );
  });
});

for (const [name, interval, least, onAverage] of [
  // At least the level, and so more on average.
  ["exact", poissonExact, 0.95, [0.95, 0.98]],
  // Mid-P aims at the level on average; at some means it falls short, by how much was computed here.
  ["mid-P", poissonMidP, 0.92, [0.945, 0.965]],
] as const) {
  describe(`The ${name} interval of a rate`, () => {
    test("covers what it says, summed over every count at means from .5 to 30.", () => {
      const known = Array.from({ length: 90 }, (_, events) => interval(events, 1, 0.95));
      const coverage: number[] = [];
      for (let mean = 0.5; mean <= 30; mean += 0.26) {
        let [chance, covered] = [Math.exp(-mean), 0];
        for (const [events, found] of known.entries()) {
          if (found && found.lower <= mean && mean <= found.upper) covered += chance;
          chance *= mean / (events + 1);
        }
        coverage.push(covered);
      }
      const average = coverage.reduce((sum, one) => sum + one, 0) / coverage.length;
      expect(Math.min(...coverage)).toBeGreaterThanOrEqual(least);
      expect(average).toBeGreaterThan(onAverage[0]);
      expect(average).toBeLessThan(onAverage[1]);
    });

    test("rises with every event, shrinks with exposure, and begins at 0 without events.", () => {
      const exposure = fc.double({ min: 0.001, max: 1e4, noNaN: true });
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 300 }), exposure, (events, over) => {
          const found = interval(events, over, 0.95);
          const more = interval(events + 1, over, 0.95);
          expect(found?.lower === 0).toBe(events === 0);
          expect(more?.lower).toBeGreaterThan(found?.lower as number);
          expect(more?.upper).toBeGreaterThan(found?.upper as number);
          expect(found?.lower).toBeLessThanOrEqual(events / over);
          expect(found?.upper).toBeGreaterThan(events / over);
          expect(interval(events, 2 * over, 0.95)?.upper).toBe((found?.upper as number) / 2);
        }),
        { seed: 42 },
      );
    });

    test("does not exist without exposure, and refuses what cannot be.", () => {
      expect(interval(0, 0, 0.95)).toBeUndefined();
      expect(interval(3, 0, 0.95)).toBeUndefined();
      expect(interval(1, 0.005, 0.95)?.upper).toBeGreaterThan(200);
      for (const [events, exposure, level] of [
        [-1, 1, 0.95],
        [0.5, 1, 0.95],
        [1, -0.005, 0.95],
        [1, Number.NaN, 0.95],
        [1, Number.POSITIVE_INFINITY, 0.95],
        [1, 0, 1],
        [1, 1, 0],
        [1, 1, Number.NaN],
      ] as const) {
        expect(() => interval(events, exposure, level)).toThrow(RangeError);
      }
    });
  });
}

function expectEnds(
  found: { lower: number; upper: number } | undefined,
  lower: number,
  upper: number,
): void {
  expect(Math.abs((found?.lower ?? Number.NaN) - lower)).toBeLessThan(1e-10);
  expect(Math.abs((found?.upper ?? Number.NaN) / upper - 1)).toBeLessThan(1e-10);
}
