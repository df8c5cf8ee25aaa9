import { expect, test } from "vitest";
import { poissonAtLeast } from "@/lib/statistics/poisson-tail";

// Expected values: by hand at the ends, else computed (R 4.2.2: ppois(events - 1, mean, lower.tail = FALSE)).

test("is 1 for none or more, and 0 where nothing is expected", () => {
  expect(poissonAtLeast(0, 0)).toBe(1);
  expect(poissonAtLeast(0, 3.5)).toBe(1);
  expect(poissonAtLeast(1, 0)).toBe(0);
  expect(poissonAtLeast(3, 0)).toBe(0);
  expect(poissonAtLeast(2, Number.MAX_SAFE_INTEGER)).toBe(1);
});

test("is exp(-mean) short of 1 for one or more", () => {
  for (const mean of [0.01, 0.7, 3, 20])
    expect(poissonAtLeast(1, mean)).toBeCloseTo(-Math.expm1(-mean), 14);
});
