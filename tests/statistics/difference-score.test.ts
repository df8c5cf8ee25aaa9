import { expect, test } from "vitest";
import { differenceScore } from "@/lib/statistics/difference-score";

// Expected values: by hand.

test("is 0 where the difference is the one supposed, with variance or without", () => {
  expect(differenceScore(0, 10, 0, 20, 0)).toBe(0);
  expect(differenceScore(10, 10, 20, 20, 0)).toBe(0);
  expect(differenceScore(5, 10, 10, 20, 0)).toBe(0);
});

test("at no difference supposed is that of the pooled proportion, times the root of (N − 1)/N", () => {
  // 6 of 10 and 3 of 10: pooled .45, variance .45·.55·(1/10 + 1/10) = .0495, and 20 units in all.
  expect(differenceScore(6, 10, 3, 10, 0)).toBeCloseTo(
    (0.3 / Math.sqrt(0.0495)) * Math.sqrt(19 / 20),
    10,
  );
});
