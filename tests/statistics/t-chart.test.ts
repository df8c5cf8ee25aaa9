import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tChart } from "@/lib/statistics/control-chart";

const days = [40, 35, 52, 47, 61, 41, 57];

describe("The t chart", () => {
  // Computed with R 4.2.2: y <- d^(1 / 3.6); (mean(y) + c(0, -1, 1) * 2.659574 *
  //   mean(abs(diff(y))))^3.6, below 0 set to 0 before the power.
  for (const [gaps, centre, lower, upper] of [
    [days, 46.97526713148528, 21.079809984522512, 90.43554348752181],
    [[10, 35, 2, 0, 90, 41, 17], 13.038817437244123, 0, 526.49909908037182],
  ] as const) {
    test(`agrees with R for ${gaps.join(", ")} days.`, () => {
      const chart = tChart(gaps);
      expect(chart?.centre).toBeCloseTo(centre, 10);
      expect(chart?.points[0]?.lower).toBeCloseTo(lower, 10);
      expect(chart?.points[0]?.upper).toBeCloseTo(upper, 10);
      expect(chart?.points.map((point) => point?.value)).toEqual(gaps);
    });
  }

  test("ends at exactly 0.", () => {
    expect(tChart([10, 35, 2, 0, 90])?.points[0]?.lower).toBe(0);
  });

  test("does not average the open gap, and calls it above but never below.", () => {
    const chart = tChart(days, 91);
    expect(chart?.centre).toBe(tChart(days)?.centre);
    expect(chart?.points[7]).toMatchObject({ value: 91, outside: "above" });
    expect(tChart(days, 90)?.points[7]?.outside).toBeNull();
    expect(tChart(days, 0)?.points[7]).toMatchObject({ value: 0, outside: null });
    expect(tChart(days, 0)?.points[7]?.lower).toBeCloseTo(21.079809984522512, 10);
  });

  test("computes its limits from the baseline and draws all.", () => {
    const chart = tChart([...days, 20, 91], undefined, { from: 0, to: 7 });
    expect(chart?.centre).toBe(tChart(days)?.centre);
    expect(chart?.points.slice(7).map((point) => point?.outside)).toEqual(["below", "above"]);
    expect(() => tChart(days, undefined, { from: 0, to: 8 })).toThrow(RangeError);
  });

  test("does not exist for fewer than two gaps, or without variation.", () => {
    expect(tChart([])).toBeUndefined();
    expect(tChart([12], 5)).toBeUndefined();
    expect(tChart([12, 12, 12])).toBeUndefined();
  });

  test("scales with the unit of time, runs backwards alike, and leaves its input.", () => {
    const gaps = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(gaps, (list) => {
        const found = tChart(Object.freeze(list));
        const scaled = tChart(list.map((day) => day * 24));
        const backwards = tChart(list.toReversed());
        if (found === undefined) return;
        expect((scaled?.centre ?? 0) / found.centre).toBeCloseTo(24, 8);
        expect((backwards?.centre ?? 0) / found.centre).toBeCloseTo(1, 8);
      }),
      { seed: 19 },
    );
  });

  test("takes part of a day and refuses what cannot be.", () => {
    expect(tChart([0.005, 3])).toBeDefined();
    for (const day of [-0.005, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => tChart([day, 3])).toThrow(RangeError);
      expect(() => tChart([1, 3], day)).toThrow(RangeError);
    }
  });
});
