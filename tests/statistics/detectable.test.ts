import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { smallestDetectable } from "@/lib/statistics/detectable";
import { tailProbability } from "@/lib/statistics/tail-probability";

describe("The smallest rate that would have been seen", () => {
  // Computed with R 4.2.2: u <- pbinom(0:n, n, th, lower.tail = FALSE) + dbinom(0:n, n, th) / 2;
  //   k <- (0:n)[u < tail][1]; qbeta(power, k, n - k + 1).
  for (const [n, theta, tail, power, rate] of [
    [200, 0.01, 0.05 / 40, 0.8, 0.050748557417674256],
    [35, 0.3, 0.001, 0.9, 0.6604932202324529],
    [1_000, 0.02, 0.025, 0.5, 0.02965743625342733],
  ] as const) {
    test(`agrees with R for ${n} units at ${theta}.`, () => {
      const found = smallestDetectable(n, theta, tail, power) ?? Number.NaN;
      expect(Math.abs(found - rate)).toBeLessThan(1e-12);
    });
  }

  test("is found where nobody has had the event: one is enough.", () => {
    // Computed: 1 − (1 − θ₁)^5 = .8.
    expect(smallestDetectable(5, 0, 0.01, 0.8)).toBeCloseTo(1 - 0.2 ** (1 / 5), 12);
  });

  test("does not exist where even nothing but events would not be seen.", () => {
    expect(smallestDetectable(0, 0.1, 0.01, 0.8)).toBeUndefined();
    // Half of .9³ = .3645 is over the tail.
    expect(smallestDetectable(3, 0.9, 0.2, 0.8)).toBeUndefined();
    expect(smallestDetectable(3, 1, 0.2, 0.8)).toBeUndefined();
    // Exactly at the tail is not under it: half of .5 at one of one.
    expect(smallestDetectable(1, 0.5, 0.25, 0.8)).toBeUndefined();
    expect(smallestDetectable(1, 0.5, 0.2501, 0.8)).toBeCloseTo(0.8, 12);
  });

  test("is theta itself where that has the power.", () => {
    expect(smallestDetectable(10, 0.5, 0.49, 0.005)).toBe(0.5);
  });

  const asked = fc.record({
    n: fc.integer({ min: 1, max: 400 }),
    theta: fc.double({ min: 0.001, max: 0.9, noNaN: true }),
    tail: fc.double({ min: 0.0001, max: 0.3, noNaN: true }),
    power: fc.double({ min: 0.6, max: 0.99, noNaN: true }),
  });

  test("has the power at the first count that is seen, searched one by one.", () => {
    fc.assert(
      fc.property(asked, ({ n, theta, tail, power }) => {
        const found = smallestDetectable(n, theta, tail, power);
        let count = 0;
        while (count <= n && tailProbability(count, n, theta).upper >= tail) count += 1;
        expect(found === undefined).toBe(count > n);
        if (found === undefined) return;
        const at = found;
        expect(at).toBeGreaterThan(theta);
        expect(Math.abs(atLeast(count, n, at) - power)).toBeLessThan(1e-9);
      }),
      { seed: 8 },
    );
  });

  test("rises with the power and with a stricter tail.", () => {
    fc.assert(
      fc.property(asked, ({ n, theta, tail, power }) => {
        const found = smallestDetectable(n, theta, tail, power);
        if (found === undefined) return;
        expect(smallestDetectable(n, theta, tail, power / 2 + 0.5)).toBeGreaterThan(found);
        expect(smallestDetectable(n, theta, tail / 3, power) ?? 1).toBeGreaterThanOrEqual(found);
      }),
      { seed: 9 },
    );
  });

  test("refuses what cannot be.", () => {
    for (const [n, theta, tail, power] of [
      [1.5, 0.1, 0.01, 0.8],
      [-1, 0.1, 0.01, 0.8],
      [9, -0.1, 0.01, 0.8],
      [9, 1.1, 0.01, 0.8],
      [9, 0.1, 0, 0.8],
      [9, 0.1, 0.5, 0.8],
      [9, 0.1, 0.01, 0],
      [9, 0.1, 0.01, 1],
      [9, 0.1, 0.01, Number.NaN],
    ] as const) {
      expect(() => smallestDetectable(n, theta, tail, power)).toThrow(RangeError);
    }
    expect(smallestDetectable(9, 0.1, 0.499, 0.8)).toBeDefined();
  });
});

/** P(X ≥ count): the mid-P tail and the other half of the count's own probability. */
function atLeast(count: number, n: number, rate: number): number {
  const here = tailProbability(count, n, rate).upper;
  const before = tailProbability(count - 1, n, rate).upper;
  let probability = 2 * (before - here);
  // P(count − 1) + P(count) = 2(before − here), and the ratio of the two is known.
  probability /= 1 + (count * (1 - rate)) / ((n - count + 1) * rate);
  return here + probability / 2;
}
