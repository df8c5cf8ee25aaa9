import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chooseP, pChart, pPrimeChart } from "@/lib/statistics/control-chart";

// Montgomery, Introduction to Statistical Quality Control: cans of orange juice, 30 samples of 50,
// 347 not conforming. Centre and limits as printed there; the single samples from memory.
const juice = [
  12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7,
  13, 9, 6,
].map((events) => ({ events, units: 50 }));

// Six periods of unlike size, the fourth missing.
const uneven = [
  { events: 3, units: 40 },
  { events: 5, units: 60 },
  { events: 2, units: 30 },
  null,
  { events: 9, units: 55 },
  { events: 4, units: 45 },
];

/** Periods of 1,000 with so many events more or less than half. */
const around = (differences: number[]) =>
  differences.map((difference) => ({ events: 500 + difference, units: 1_000 }));

describe("The p chart", () => {
  test("has Montgomery's .0524, .2313 and .4102 for orange juice, and his two samples outside.", () => {
    const chart = pChart(juice);
    const [first] = chart?.points ?? [];
    expect([first?.lower, chart?.centre, first?.upper].map((end) => end?.toFixed(4))).toEqual([
      "0.0524",
      "0.2313",
      "0.4102",
    ]);
    // From memory: samples 15 and 23.
    expect(chart?.points.map((point) => point?.outside === "above").indexOf(true)).toBe(14);
    expect(chart?.points.filter((point) => point?.outside)).toHaveLength(2);
    // Computed with R 4.2.2: p - 3 * sqrt(p * (1 - p) / 50).
    expect(first?.lower).toBeCloseTo(0.05242754807192823, 13);
    expect(first?.upper).toBeCloseTo(0.41023911859473844, 13);
  });

  test("has limits by each period's own units, ends at 0, and gaps.", () => {
    const chart = pChart(uneven);
    expect(chart?.centre).toBe(0.1);
    expect(chart?.points[3]).toBeNull();
    // Computed with R 4.2.2, as above with each period's units.
    const upper = [0.2423024947075771, 0.2161895003862225, 0.26431676725154984];
    upper.forEach((end, i) => {
      expect(chart?.points[i]?.upper).toBeCloseTo(end, 13);
      expect(chart?.points[i]?.lower).toBe(0);
    });
    expect(chart?.points[1]?.value).toBe(5 / 60);
    expect(pChart([...uneven.slice(0, 3), { events: 0, units: 0 }, ...uneven.slice(4)])).toEqual(
      chart,
    );
  });

  test("ends at 1 as well, and calls a period with no event below where it is.", () => {
    const chart = pChart([
      { events: 49, units: 50 },
      { events: 50, units: 50 },
      { events: 0, units: 1 },
    ]);
    expect(chart?.points.map((point) => point?.upper)).toEqual([1, 1, 1]);
    expect(chart?.points.map((point) => point?.outside)).toEqual([null, null, "below"]);
  });

  test("does not exist without units, events, or anything but events.", () => {
    expect(pChart([])).toBeUndefined();
    expect(pChart([null, { events: 0, units: 0 }])).toBeUndefined();
    expect(pChart([{ events: 0, units: 9 }])).toBeUndefined();
    expect(pChart([{ events: 9, units: 9 }])).toBeUndefined();
    expect(pChart([{ events: 1, units: 200 }])?.centre).toBe(0.005);
  });
});

describe("The p′ chart", () => {
  test("agrees with R for orange juice.", () => {
    // Computed with R 4.2.2: z <- (x / n - p) / s; mean(abs(diff(z))) / 1.128.
    const chart = pPrimeChart(juice);
    expect(chart?.sigmaZ).toBeCloseTo(1.6608667197432385, 12);
    expect(chart?.points[0]?.upper).toBeCloseTo(0.5284719980435315, 12);
    expect(chart?.points[0]?.lower).toBe(0);
    expect(chart?.centre).toBe(347 / 1_500);
  });

  test("takes no range across a gap.", () => {
    // Computed with R 4.2.2: the same with mean(…, na.rm = TRUE).
    const chart = pPrimeChart(uneven);
    expect(chart?.sigmaZ).toBeCloseTo(0.6195475591711737, 12);
    const upper = [0.18816316326004823, 0.17198492136560228, 0.20180205208159555];
    upper.forEach((end, i) => {
      expect(chart?.points[i]?.upper).toBeCloseTo(end, 12);
    });
    expect(chart?.points[3]).toBeNull();
  });

  test("ends at 1.", () => {
    const chart = pPrimeChart([
      { events: 49, units: 50 },
      { events: 44, units: 50 },
    ]);
    expect(chart?.points[0]?.upper).toBe(1);
  });

  test("does not exist where the p chart does not, without neighbours, or without variation.", () => {
    expect(pPrimeChart([])).toBeUndefined();
    expect(
      pPrimeChart([
        { events: 0, units: 9 },
        { events: 0, units: 8 },
      ]),
    ).toBeUndefined();
    expect(
      pPrimeChart([
        { events: 9, units: 9 },
        { events: 8, units: 8 },
      ]),
    ).toBeUndefined();
    expect(pPrimeChart([{ events: 1, units: 9 }, null, { events: 2, units: 8 }])).toBeUndefined();
    expect(
      pPrimeChart([
        { events: 1, units: 9 },
        { events: 1, units: 9 },
      ]),
    ).toBeUndefined();
    const rare = pPrimeChart([
      { events: 1, units: 400 },
      { events: 3, units: 400 },
    ]);
    expect(rare?.centre).toBe(0.005);
  });
});

describe("The choice between the two", () => {
  test("is p′ for orange juice, whose Σz² of 85.4 exceeds the 42.6 of χ² with 29 (R 4.2.2).", () => {
    expect(chooseP(juice)).toBe("p-prime");
    expect(chooseP(uneven)).toBe("p");
  });

  test("turns at the 95 % quantile of χ² with a degree less than periods.", () => {
    // Computed with R 4.2.2: qchisq(.95, 5) = 11.0705, Σz² being the sum of squares over 250:
    // 2766 gives 11.064, 2768 gives 11.072.
    expect(chooseP(around([-33, -16, 14, 0, 35, 0]))).toBe("p");
    expect(chooseP(around([-33, -21, 14, 9, 31, 0]))).toBe("p-prime");
  });

  test("is p where nothing can vary, and looks at the baseline only.", () => {
    expect(chooseP([])).toBe("p");
    expect(chooseP([{ events: 3, units: 10 }])).toBe("p");
    expect(
      chooseP([
        { events: 0, units: 10 },
        { events: 0, units: 20 },
      ]),
    ).toBe("p");
    expect(
      chooseP([
        { events: 10, units: 10 },
        { events: 20, units: 20 },
      ]),
    ).toBe("p");
    const rare = [
      { events: 0, units: 10_000 },
      { events: 100, units: 10_000 },
    ];
    expect(chooseP(rare)).toBe("p-prime");
    expect(chooseP([...rare, null], { from: 1, to: 3 })).toBe("p");
  });
});

describe("Both charts", () => {
  const period = fc.option(
    fc
      .integer({ min: 0, max: 80 })
      .chain((units) =>
        fc.record({ events: fc.integer({ min: 0, max: units }), units: fc.constant(units) }),
      ),
    { nil: null },
  );

  for (const [name, chart] of Object.entries({ pChart, pPrimeChart })) {
    test(`${name} turns over with what is counted as the event, and leaves its input.`, () => {
      fc.assert(
        fc.property(fc.array(period, { maxLength: 30 }), (periods) => {
          for (const one of periods) Object.freeze(one);
          const found = chart(Object.freeze(periods));
          const turned = chart(
            periods.map((one) => one && { ...one, events: one.units - one.events }),
          );
          expect(turned === undefined).toBe(found === undefined);
          found?.points.forEach((point, i) => {
            const other = turned?.points[i];
            expect(other === null).toBe(point === null);
            if (point === null || !other) return;
            expect(Math.abs(point.lower - (1 - other.upper))).toBeLessThan(1e-9);
            expect(point.lower).toBeGreaterThanOrEqual(0);
            expect(point.upper).toBeLessThanOrEqual(1);
          });
        }),
        { seed: 16 },
      );
    });

    test(`${name} computes its limits from the baseline and draws all.`, () => {
      const whole = chart(uneven, { from: 0, to: uneven.length });
      expect(whole).toEqual(chart(uneven));
      const segment = chart(uneven, { from: 1, to: 3 });
      expect(segment?.points).toHaveLength(6);
      expect(segment?.points.slice(1, 3)).toEqual(chart(uneven.slice(1, 3))?.points);
    });

    test(`${name} refuses what cannot be.`, () => {
      expect(() => chart([{ events: 3, units: 2 }])).toThrow(RangeError);
      expect(() => chart([{ events: 0.5, units: 2 }])).toThrow(RangeError);
      for (const [from, to] of [
        [-1, 2],
        [2, 2],
        [0, 7],
        [0.5, 2],
        [0, 1.5],
      ] as const) {
        expect(() => chart(uneven, { from, to })).toThrow(RangeError);
      }
    });
  }
});
