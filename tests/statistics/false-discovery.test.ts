import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { benjaminiHochberg } from "@/lib/statistics/false-discovery";

// Benjamini & Hochberg 1995, JRSS B 57:289, the fifteen p-values of their example.
const example = [
  0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719,
  0.6528, 0.759, 1,
];

describe("The adjustment for false discovery", () => {
  test("rejects four of the fifteen at .05, as Benjamini & Hochberg 1995 do.", () => {
    expect(benjaminiHochberg(example).filter((p) => p <= 0.05)).toHaveLength(4);
  });

  test("agrees with R for the fifteen.", () => {
    // Computed with R 4.2.2: p.adjust(p, "BH").
    const computed = [
      0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.06385714285714286, 0.06385714285714286, 0.0645,
      0.0765, 0.486, 0.5811818181818181, 0.7148749999999999, 0.7532307692307693, 0.8132142857142857,
      1,
    ];
    benjaminiHochberg(example).forEach((adjusted, i) => {
      expect(Math.abs(adjusted - (computed[i] ?? Number.NaN))).toBeLessThan(1e-12);
    });
  });

  test("answers none with none and leaves one alone as it is.", () => {
    expect(benjaminiHochberg([])).toEqual([]);
    expect(benjaminiHochberg([0])).toEqual([0]);
    expect(benjaminiHochberg([1])).toEqual([1]);
    expect(benjaminiHochberg([0.3])).toEqual([0.3]);
  });

  const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 40 });

  test("never lowers a value, never passes 1 and keeps the order.", () => {
    fc.assert(
      fc.property(values, (p) => {
        const adjusted = benjaminiHochberg(Object.freeze(p));
        p.forEach((one, i) => {
          expect(adjusted[i]).toBeGreaterThanOrEqual(one);
          expect(adjusted[i]).toBeLessThanOrEqual(1);
          p.forEach((other, j) => {
            if (one <= other) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j] as number);
          });
        });
      }),
      { seed: 1 },
    );
  });

  test("does not depend on the order of the values.", () => {
    fc.assert(
      fc.property(values, (p) => {
        const reversed = benjaminiHochberg(p.toReversed()).toReversed();
        expect(benjaminiHochberg(p)).toEqual(reversed);
      }),
      { seed: 2 },
    );
  });

  test("refuses what is no probability.", () => {
    for (const value of [-0.005, 1.005, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => benjaminiHochberg([0.5, value])).toThrow(RangeError);
    }
  });
});
