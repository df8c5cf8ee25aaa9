import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bernoulliCusum } from "@/lib/statistics/bernoulli-cusum";
import { cusumWeight } from "@/lib/statistics/cusum-weight";

describe("The weight of an outcome", () => {
  // Steiner 2000, Biostatistics 1:441: logit p = −3.68 + .077·score, odds ratio 2.
  for (const [score, without, withEvent] of [
    [0, "-0.024", "0.669"],
    [50, "-0.433", "0.260"],
  ] as const) {
    test(`is ${without} and ${withEvent} for Steiner's score ${score}.`, () => {
      const p = 1 / (1 + Math.exp(3.68 - 0.077 * score));
      expect(cusumWeight(0, p, 2).toFixed(3)).toBe(without);
      expect(cusumWeight(1, p, 2).toFixed(3)).toBe(withEvent);
    });
  }

  test("agrees with R at p = .0246.", () => {
    // Computed with R 4.2.2: -log(1 + p) and log(2) - log(1 + p).
    expect(cusumWeight(0, 0.024602428402739435, 2)).toBeCloseTo(-0.024304662618477007, 14);
    expect(cusumWeight(1, 0.024602428402739435, 2)).toBeCloseTo(0.6688425179414683, 14);
  });

  test("falls on average where the baseline holds, and rises where the odds are worse as said.", () => {
    const p = fc.double({ min: 0.001, max: 0.99, noNaN: true });
    const ratio = fc.double({ min: 1.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(p, ratio, (baseline, oddsRatio) => {
        const mean = (at: number) =>
          at * cusumWeight(1, baseline, oddsRatio) + (1 - at) * cusumWeight(0, baseline, oddsRatio);
        expect(mean(baseline)).toBeLessThan(0);
        const odds = (oddsRatio * baseline) / (1 - baseline);
        expect(mean(odds / (1 + odds))).toBeGreaterThan(0);
      }),
      { seed: 22 },
    );
  });

  test("is refused for what cannot be.", () => {
    for (const [outcome, baseline, oddsRatio] of [
      [2, 0.1, 2],
      [0.5, 0.1, 2],
      [1, 0, 2],
      [1, 1, 2],
      [1, 1.005, 2],
      [1, Number.NaN, 2],
      [1, 0.1, 1],
      [1, 0.1, 0.5],
      [1, 0.1, Number.POSITIVE_INFINITY],
    ] as const) {
      expect(() => cusumWeight(outcome as 0 | 1, baseline, oddsRatio)).toThrow(RangeError);
    }
    expect(cusumWeight(0, 0.005, 1.005)).toBeLessThan(0);
  });
});

describe("The Bernoulli CUSUM", () => {
  const outcomes = [0, 1, 0, 1, 1, 0, 0, 1] as const;
  const baselines = [0.02, 0.03, 0.05, 0.02, 0.04, 0.1, 0.02, 0.03];

  test("agrees with R: it shows the height of a signal, then begins at 0.", () => {
    // Computed with R 4.2.2: a loop of S <- max(0, S + o * log(1.8) - log(1 + b * .8)), 0 after 1.5.
    const path = [
      0, 0.564070138284803, 0.5248494251315217, 1.0967627408773506, 1.6530507387200986, 0, 0,
      0.564070138284803,
    ];
    const found = bernoulliCusum(outcomes, baselines, 1.8, 1.5);
    expect(found.signals).toEqual([4]);
    expect(found.path).toHaveLength(8);
    path.forEach((height, i) => {
      expect(Math.abs((found.path[i] ?? Number.NaN) - height)).toBeLessThan(1e-12);
    });
    expect(found.path[0]).toBe(0);
  });

  test("signals at the limit itself.", () => {
    const limit = cusumWeight(1, 0.1, 2);
    expect(bernoulliCusum([1, 1], 0.1, 2, limit)).toEqual({
      path: [limit, limit],
      signals: [0, 1],
    });
    expect(bernoulliCusum([1], 0.1, 2, limit * (1 + 1e-12)).signals).toEqual([]);
  });

  test("takes one baseline for all, and small limits; nothing gives nothing.", () => {
    expect(bernoulliCusum(outcomes, 0.04, 2, 3)).toEqual(
      bernoulliCusum(
        outcomes,
        outcomes.map(() => 0.04),
        2,
        3,
      ),
    );
    expect(bernoulliCusum([1], 0.99, 2, 0.005).signals).toEqual([0]);
    expect(bernoulliCusum([], 0.1, 2, 3)).toEqual({ path: [], signals: [] });
  });

  test("never falls under 0, signals no more often at a higher limit, and leaves its input.", () => {
    const list = fc.array(fc.constantFrom(0 as const, 1 as const), { maxLength: 80 });
    fc.assert(
      fc.property(list, fc.double({ min: 0.5, max: 4, noNaN: true }), (given, limit) => {
        const found = bernoulliCusum(Object.freeze(given), 0.2, 2, limit);
        for (const height of found.path) expect(height).toBeGreaterThanOrEqual(0);
        const higher = bernoulliCusum(given, 0.2, 2, limit * 1.5);
        expect(higher.signals.length).toBeLessThanOrEqual(found.signals.length);
        expect(found.signals).toEqual(
          [...found.path.keys()].filter((i) => (found.path[i] ?? 0) >= limit),
        );
      }),
      { seed: 23 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const limit of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => bernoulliCusum([1], 0.1, 2, limit)).toThrow(RangeError);
    }
    expect(() => bernoulliCusum([1, 0], [0.1], 2, 3)).toThrow(RangeError);
    expect(() => bernoulliCusum([1], [1.5], 2, 3)).toThrow(RangeError);
    expect(() => bernoulliCusum([1], 0.1, 1, 3)).toThrow(RangeError);
  });
});
