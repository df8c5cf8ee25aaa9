import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overdispersion } from "@/lib/statistics/overdispersion";

// Computed with R 4.2.2: th <- sum(e) / sum(n); z <- (e - n * th) / sqrt(n * th * (1 - th));
//   phi <- sum(z^2) / 5; w <- n / (th * (1 - th)); (5 * phi - 4) / (sum(w) - sum(w^2) / sum(w)).
const five = [
  { events: 3, units: 120 },
  { events: 1, units: 60 },
  { events: 0, units: 80 },
  { events: 6, units: 90 },
  { events: 2, units: 150 },
];
const z = [
  0.0715747917892336, -0.3711474846653365, -1.4025737466365533, 2.644718419629145,
  -0.8535791995526398,
];

describe("Overdispersion", () => {
  test("agrees with R for five clinicians, one without an event.", () => {
    const found = overdispersion(five);
    expect(found?.theta).toBe(12 / 500);
    z.forEach((value, i) => {
      expect(Math.abs((found?.z[i] ?? Number.NaN) - value)).toBeLessThan(1e-12);
    });
    expect(Math.abs((found?.phi ?? 0) - 1.966643897996357)).toBeLessThan(1e-12);
    expect(Math.abs((found?.tau2 ?? 0) - 0.0003503521367521367)).toBeLessThan(1e-15);
  });

  test("leaves one without units out of everything but its place.", () => {
    const without = overdispersion([
      ...five.slice(0, 2),
      { events: 0, units: 0 },
      ...five.slice(2),
    ]);
    const plain = overdispersion(five);
    expect(without).toEqual({ ...plain, z: plain?.z.toSpliced(2, 0, null) });
  });

  test("is nothing between clinicians of one rate.", () => {
    const even = [
      { events: 2, units: 20 },
      { events: 5, units: 50 },
    ];
    expect(overdispersion(even)).toEqual({ theta: 0.1, z: [0, 0], phi: 0, tau2: 0 });
  });

  test("does not exist for fewer than two, or where theta is 0 or 1.", () => {
    expect(overdispersion([])).toBeUndefined();
    expect(overdispersion(five.slice(0, 1))).toBeUndefined();
    expect(
      overdispersion([
        { events: 3, units: 9 },
        { events: 0, units: 0 },
      ]),
    ).toBeUndefined();
    expect(
      overdispersion([
        { events: 0, units: 9 },
        { events: 0, units: 5 },
      ]),
    ).toBeUndefined();
    expect(
      overdispersion([
        { events: 9, units: 9 },
        { events: 5, units: 5 },
      ]),
    ).toBeUndefined();
  });

  test("does not depend on order, nor on what is counted as the event.", () => {
    const unit = fc
      .integer({ min: 1, max: 300 })
      .chain((units) =>
        fc.record({ events: fc.integer({ min: 0, max: units }), units: fc.constant(units) }),
      );
    fc.assert(
      fc.property(fc.array(unit, { minLength: 2, maxLength: 20 }), (units) => {
        const found = overdispersion(Object.freeze(units.map((one) => Object.freeze(one))));
        const others = [
          overdispersion(units.toReversed()),
          overdispersion(units.map((one) => ({ ...one, events: one.units - one.events }))),
        ];
        for (const other of others) {
          expect(other === undefined).toBe(found === undefined);
          if (found === undefined || other === undefined) continue;
          expect(other.phi / found.phi).toBeCloseTo(1, 9);
          expect(Math.abs(other.tau2 - found.tau2)).toBeLessThan(1e-12);
          expect(found.tau2).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 5 },
    );
  });

  test("refuses counts that cannot be.", () => {
    expect(() => overdispersion([{ events: 3, units: 2 }])).toThrow(RangeError);
    expect(() => overdispersion([{ events: 0.5, units: 2 }])).toThrow(RangeError);
  });
});
