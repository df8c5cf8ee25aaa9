import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axisOf } from "@/lib/views/axis";

// Expected ticks: computed by hand from the rule that steps are 1, 2 or 5 times a power of ten, of time whole parts of a minute.

describe("an axis", () => {
  test("of shares ends at 0 and 100 %", () => {
    const axis = axisOf([0, 0.97, 1], "share", "");
    expect([axis.min, axis.max]).toEqual([0, 1]);
    expect(axis.ticks.map((tick) => tick.words)).toEqual([
      "0 %",
      "20 %",
      "40 %",
      "60 %",
      "80 %",
      "100 %",
    ]);
  });

  test("of small shares keeps its decimals", () => {
    expect(axisOf([0, 0.0104], "share", "").ticks.map((tick) => tick.words)).toEqual([
      "0.0 %",
      "0.5 %",
      "1.0 %",
      "1.5 %",
    ]);
  });

  test("of time steps by parts of a minute", () => {
    expect(axisOf([0, 300], "s", "").ticks.map((tick) => tick.words)).toEqual([
      "0",
      "1 min",
      "2 min",
      "3 min",
      "4 min",
      "5 min",
    ]);
  });

  test("of nothing, of one value and of 0 has ends that differ", () => {
    for (const values of [[], [5], [0]]) {
      const axis = axisOf(values, "mL", "");
      expect(axis.max).toBeGreaterThan(axis.min);
    }
  });

  test("holds every value between its ends, has few ticks and none twice", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 20 }),
        fc.constantFrom("s", "mL"),
        (values, unit) => {
          const axis = axisOf(values, unit, "");
          const slack = (axis.max - axis.min) * 1e-9;
          expect(Math.min(...values)).toBeGreaterThanOrEqual(axis.min - slack);
          expect(Math.max(...values)).toBeLessThanOrEqual(axis.max + slack);
          expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
          expect(axis.ticks.length).toBeLessThanOrEqual(12);
          expect(new Set(axis.ticks.map((tick) => tick.value)).size).toBe(axis.ticks.length);
        },
      ),
    );
  });
});
