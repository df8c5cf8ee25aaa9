import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gChart } from "@/lib/statistics/control-chart";

describe("The g chart", () => {
  // Computed with R 4.2.2: qgeom(c(.00135, .5, .99865), 1 / (1 + mean)).
  for (const [mean, lower, centre, upper, showsWorsening] of [
    [0, 0, 0, 0, false],
    [1, 0, 0, 9, false],
    [40, 0, 28, 267, false],
    [415, 0, 288, 2_745, false],
    [735, 0, 509, 4_859, false],
    [1_000, 1, 693, 6_610, true],
    [10_000, 13, 6_931, 66_079, true],
  ] as const) {
    test(`agrees with R at a mean of ${mean}.`, () => {
      const chart = gChart([mean, mean]);
      expect(chart).toMatchObject({ centre, showsWorsening, probability: 1 / (1 + mean) });
      expect(chart?.points[0]).toEqual({ value: mean, lower, upper, outside: null });
    });
  }

  test("averages closed gaps only, and calls the open one above but never below.", () => {
    const closed = gChart([30, 50]);
    const open = gChart([30, 50], 268);
    expect(open).toMatchObject({ centre: 28, probability: 1 / 41 });
    expect(open?.points.slice(0, 2)).toEqual(closed?.points);
    expect(open?.points[2]).toEqual({ value: 268, lower: 0, upper: 267, outside: "above" });
    expect(gChart([30, 50], 267)?.points[2]?.outside).toBeNull();
    expect(gChart([10_000], 0)?.points[1]).toMatchObject({ value: 0, lower: 13, outside: null });
    expect(gChart([0, 20_000])?.points[0]?.outside).toBe("below");
  });

  test("computes its limits from the baseline and draws all.", () => {
    const chart = gChart([1, 1, 40, 9], undefined, { from: 0, to: 2 });
    expect(chart?.centre).toBe(0);
    expect(chart?.points.map((point) => point?.outside)).toEqual([null, null, "above", null]);
    expect(() => gChart([1], undefined, { from: 0, to: 2 })).toThrow(RangeError);
  });

  test("does not exist without a closed gap.", () => {
    expect(gChart([])).toBeUndefined();
    expect(gChart([], 12)).toBeUndefined();
  });

  test("has limits that rise with the gaps, and leaves its input.", () => {
    const gaps = fc.array(fc.integer({ min: 0, max: 2_000 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(gaps, (list) => {
        const found = gChart(Object.freeze(list));
        const longer = gChart(list.map((gap) => gap + 7));
        expect(longer?.centre).toBeGreaterThanOrEqual(found?.centre as number);
        expect(longer?.points[0]?.upper).toBeGreaterThan(found?.points[0]?.upper as number);
        expect(found?.showsWorsening).toBe((found?.points[0]?.lower ?? 0) > 0);
        expect(gChart(list.toReversed())?.centre).toBe(found?.centre);
      }),
      { seed: 18 },
    );
  });

  test("refuses what is no count.", () => {
    for (const gap of [-1, 1.5, Number.NaN]) {
      expect(() => gChart([gap])).toThrow(RangeError);
      expect(() => gChart([3], gap)).toThrow(RangeError);
    }
  });
});
