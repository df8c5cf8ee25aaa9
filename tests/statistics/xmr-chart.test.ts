import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { xmrChart } from "@/lib/statistics/control-chart";

// Montgomery, Introduction to Statistical Quality Control: costs of processing mortgage loans. Mean
// and limits as printed there; the single values from memory.
const loans = [
  310, 288, 297, 298, 307, 303, 294, 297, 308, 306, 294, 299, 297, 299, 314, 295, 293, 306, 301,
  304,
].map((value) => ({ value, n: 25 }));

function drawn(...given: Parameters<typeof xmrChart>) {
  const chart = xmrChart(...given);
  if (!chart.drawn) throw new Error(`a chart was expected: ${chart.reason}`);
  return chart;
}

describe("The XmR chart", () => {
  test("has Montgomery's 300.5, 7.79, 279.78 and 321.22 for loan costs.", () => {
    const chart = drawn(loans);
    const [first] = chart.points;
    expect(chart.centre).toBe(300.5);
    expect(chart.movingRange.toFixed(2)).toBe("7.79");
    expect(first?.lower.toFixed(2)).toBe("279.78");
    expect(first?.upper.toFixed(2)).toBe("321.22");
    // Computed with R 4.2.2: mean(x) ± 2.659574 * mean(abs(diff(x))).
    expect(first?.lower).toBeCloseTo(279.7833183157895, 10);
    expect(first?.upper).toBeCloseTo(321.2166816842105, 10);
    expect(chart.points.every((point) => point?.outside === null)).toBe(true);
  });

  test("takes no range across a gap: a month missing, or with fewer than 10 units.", () => {
    const values = [10, 12, 50, 11, 10, 12];
    const missing = values.map((value) => (value === 50 ? null : { value, n: 10 }));
    const few = values.map((value) => ({ value, n: value === 50 ? 9 : 10 }));
    const chart = drawn(missing);
    expect(chart.movingRange).toBe((2 + 1 + 2) / 3);
    expect(chart.centre).toBe(11);
    expect(chart.points[2]).toBeNull();
    expect(drawn(few)).toEqual(chart);
  });

  test("is not screened: a large range stays in.", () => {
    const values = [10, 10, 10, 10, 50].map((value) => ({ value, n: 20 }));
    expect(drawn(values).movingRange).toBe(10);
  });

  test("computes its limits from the baseline and draws all.", () => {
    const chart = drawn([...loans, { value: 322, n: 25 }, { value: 279, n: 25 }], {
      from: 0,
      to: 20,
    });
    expect(chart.centre).toBe(300.5);
    expect(chart.points.slice(20).map((point) => point?.outside)).toEqual(["above", "below"]);
    expect(() => xmrChart(loans, { from: 0, to: 21 })).toThrow(RangeError);
  });

  test("is not drawn when the largest month has over 4 times the units of the smallest.", () => {
    const sized = (small: number, large: number) =>
      xmrChart([{ value: 1, n: small }, { value: 2, n: large }, { value: 3, n: 9 }, null]);
    expect(sized(100, 400).drawn).toBe(true);
    expect(sized(100, 401)).toEqual({ drawn: false, reason: "uneven-months" });
    expect(sized(401, 100)).toEqual({ drawn: false, reason: "uneven-months" });
  });

  test("is not drawn without neighbours or variation.", () => {
    const one = { value: 5, n: 12 };
    for (const periods of [[], [one], [one, null, one], [one, { value: 6, n: 9 }]]) {
      expect(xmrChart(periods)).toEqual({ drawn: false, reason: "no-neighbours" });
    }
    expect(xmrChart([one, one])).toEqual({ drawn: false, reason: "no-variation" });
    expect(drawn([one, { value: 5.005, n: 12 }]).movingRange).toBeCloseTo(0.005, 12);
  });

  test("shifts and scales with its values, and leaves its input.", () => {
    const period = fc.option(
      fc.record({ value: fc.integer({ min: 0, max: 900 }), n: fc.integer({ min: 5, max: 38 }) }),
      { nil: null },
    );
    fc.assert(
      fc.property(fc.array(period, { maxLength: 30 }), (periods) => {
        for (const one of periods) Object.freeze(one);
        const found = xmrChart(Object.freeze(periods));
        const moved = xmrChart(periods.map((one) => one && { ...one, value: 3 * one.value + 7 }));
        expect(moved.drawn).toBe(found.drawn);
        if (!found.drawn || !moved.drawn) return;
        found.points.forEach((point, i) => {
          const other = moved.points[i];
          expect(other === null).toBe(point === null);
          if (point === null || !other) return;
          expect(Math.abs(other.upper - (3 * point.upper + 7))).toBeLessThan(1e-9);
          expect(Math.abs(other.lower - (3 * point.lower + 7))).toBeLessThan(1e-9);
        });
      }),
      { seed: 20 },
    );
  });

  test("refuses what cannot be.", () => {
    expect(() => xmrChart([{ value: Number.NaN, n: 12 }])).toThrow(RangeError);
    expect(() => xmrChart([{ value: 1, n: 12.5 }])).toThrow(RangeError);
    expect(() => xmrChart([{ value: 1, n: -1 }])).toThrow(RangeError);
  });
});
