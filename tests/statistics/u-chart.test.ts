import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { uChart } from "@/lib/statistics/control-chart";

const periods = [
  { events: 2, exposure: 120.5 },
  { events: 0, exposure: 80 },
  null,
  { events: 3, exposure: 150 },
  { events: 9, exposure: 90 },
];

describe("The u chart", () => {
  test("agrees with R, with gaps and the lower end at 0.", () => {
    // Computed with R 4.2.2: u + 3 * sqrt(u / exposure).
    const chart = uChart(periods);
    expect(chart?.centre).toBeCloseTo(0.03178206583427923, 14);
    const upper = [0.08050335741386157, 0.09157740349831799, null, 0.07545040619725563];
    upper.forEach((end, i) => {
      if (end === null) expect(chart?.points[i]).toBeNull();
      else expect(chart?.points[i]?.upper).toBeCloseTo(end, 13);
    });
    expect(chart?.points.map((point) => point?.lower)).toEqual([0, 0, undefined, 0, 0]);
    expect(chart?.points.map((point) => point?.outside)).toEqual([
      null,
      null,
      undefined,
      null,
      "above",
    ]);
    expect(chart?.points[0]?.value).toBe(2 / 120.5);
  });

  test("has a lower end over 0 where there is much exposure, and points below it.", () => {
    const chart = uChart([
      { events: 150, exposure: 100 },
      { events: 50, exposure: 100 },
    ]);
    // Computed: 1 ± 3·√(1/100).
    expect(chart?.points[0]?.lower).toBeCloseTo(0.7, 13);
    expect(chart?.points[0]?.upper).toBeCloseTo(1.3, 13);
    expect(chart?.points.map((point) => point?.outside)).toEqual(["above", "below"]);
  });

  test("makes a gap of no exposure, and takes one that is small.", () => {
    const chart = uChart([
      { events: 0, exposure: 0 },
      { events: 1, exposure: 0.005 },
    ]);
    expect(chart?.points[0]).toBeNull();
    expect(chart?.centre).toBe(200);
  });

  test("does not exist without exposure or events.", () => {
    expect(uChart([])).toBeUndefined();
    expect(uChart([null])).toBeUndefined();
    expect(uChart([{ events: 0, exposure: 30 }])).toBeUndefined();
  });

  test("computes its limits from the baseline and draws all.", () => {
    expect(uChart(periods, { from: 0, to: 5 })).toEqual(uChart(periods));
    const segment = uChart(periods, { from: 3, to: 5 });
    expect(segment?.centre).toBe(12 / 240);
    expect(segment?.points).toHaveLength(5);
    expect(() => uChart(periods, { from: 3, to: 6 })).toThrow(RangeError);
  });

  test("scales with the unit of exposure, and leaves its input.", () => {
    const period = fc.record({
      events: fc.integer({ min: 0, max: 30 }),
      exposure: fc.integer({ min: 1, max: 500 }),
    });
    fc.assert(
      fc.property(fc.array(period, { maxLength: 20 }), (list) => {
        for (const one of list) Object.freeze(one);
        const found = uChart(Object.freeze(list));
        const scaled = uChart(list.map((one) => ({ ...one, exposure: one.exposure * 4 })));
        found?.points.forEach((point, i) => {
          const upper = scaled?.points[i]?.upper ?? Number.NaN;
          expect(Math.abs(upper * 4 - (point?.upper ?? 0))).toBeLessThan(1e-9);
        });
        expect(scaled === undefined).toBe(found === undefined);
      }),
      { seed: 17 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const [events, exposure] of [
      [1, 0],
      [1, -1],
      [0, -0.005],
      [1.5, 10],
      [-1, 10],
      [1, Number.NaN],
      [1, Number.POSITIVE_INFINITY],
    ] as const) {
      expect(() => uChart([{ events, exposure }])).toThrow(RangeError);
    }
  });
});
