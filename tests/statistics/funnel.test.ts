import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { funnelLimits, overdispersion, tailProbability } from "@/lib/statistics/funnel";

// Computed with R 4.2.2: f <- function(t, n, p) { r <- qbinom(p, n, t);
//   (r - (pbinom(r, n, t) - p) / dbinom(r, n, t)) / n }, for θ = .02 and n = 100.
const computed = [
  [0.001, -0.00992459633926134],
  [0.025, -0.00811490848153345],
  [0.975, 0.0473077172232325],
  [0.999, 0.06978256376878131],
] as const;

describe("The limits of a funnel", () => {
  test("are −.0099, −.0081, .0473 and .0698 at .02 and 100 (computed, four decimals).", () => {
    const found = computed.map(([tail]) => funnelLimits(0.02, 100, tail)?.toFixed(4));
    expect(found).toEqual(["-0.0099", "-0.0081", "0.0473", "0.0698"]);
  });

  test("agree with R.", () => {
    for (const [tail, limit] of computed) {
      expect(Math.abs((funnelLimits(0.02, 100, tail) ?? 1) - limit)).toBeLessThan(1e-12);
    }
  });

  test("do not exist at a rate of 0 or 1, or without units.", () => {
    expect(funnelLimits(0, 100, 0.975)).toBeUndefined();
    expect(funnelLimits(1, 100, 0.975)).toBeUndefined();
    expect(funnelLimits(0.02, 0, 0.975)).toBeUndefined();
    expect(funnelLimits(0.01, 100, 0.975)).toBeDefined();
  });

  const theta = fc.double({ min: 0.005, max: 0.995, noNaN: true });
  const units = fc.integer({ min: 1, max: 3_000 });

  test("rise with the tail and leave [0, 1] by 1/n at most.", () => {
    fc.assert(
      fc.property(theta, units, (rate, n) => {
        const limits = computed.map(([tail]) => funnelLimits(rate, n, tail) as number);
        expect(limits).toEqual(limits.toSorted((a, b) => a - b));
        expect(limits[0]).toBeGreaterThanOrEqual(-1 / n);
        expect(limits[3]).toBeLessThanOrEqual(1);
      }),
      { seed: 6 },
    );
  });

  test("leave the tail below them, when the probability of a count is spread over one before it.", () => {
    fc.assert(
      fc.property(theta, fc.integer({ min: 1, max: 400 }), (rate, n) => {
        const limit = (funnelLimits(rate, n, 0.975) as number) * n;
        const whole = Math.ceil(limit);
        // P(X ≤ whole) − P(X = whole)·(whole − limit), by the two mid-P tails on either side.
        const at = (count: number) => {
          if (count < 0) return 0;
          return count >= n ? 1 : 1 - exactUpper(count + 1, n, rate);
        };
        const below = at(whole) - (at(whole) - at(whole - 1)) * (whole - limit);
        expect(Math.abs(below - 0.975)).toBeLessThan(1e-9);
      }),
      { seed: 7 },
    );
  });

  test("come with the other two functions of a funnel plot.", () => {
    expect(tailProbability(1, 2, 0.5).p).toBe(1);
    expect(overdispersion([])).toBeUndefined();
  });

  test("refuse what cannot be.", () => {
    for (const [rate, n, tail] of [
      [-0.005, 10, 0.5],
      [1.005, 10, 0.5],
      [0.1, 1.5, 0.5],
      [0.1, -1, 0.5],
      [0.1, 10, 0],
      [0.1, 10, 1],
      [0.1, 10, 1.005],
      [0.1, 10, Number.NaN],
    ] as const) {
      expect(() => funnelLimits(rate, n, tail)).toThrow(RangeError);
    }
    expect(funnelLimits(0.1, 10, 0.005)).toBeDefined();
  });
});

/** P(X ≥ count), added up from the logarithms of its terms. */
function exactUpper(count: number, n: number, rate: number): number {
  let sum = 0;
  let logWays = 0;
  for (let k = 0; k <= n; k += 1) {
    if (k >= count) sum += Math.exp(logWays + k * Math.log(rate) + (n - k) * Math.log1p(-rate));
    logWays += Math.log((n - k) / (k + 1));
  }
  return sum;
}
