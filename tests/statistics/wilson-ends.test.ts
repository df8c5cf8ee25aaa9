import { expect, test } from "vitest";
import { wilsonEnds } from "@/lib/statistics/wilson-ends";

// Expected values: by hand; the numbers of units and quantiles are ones at which rounding would tell otherwise.

test("is exactly 0 and 1 at the ends, and never beyond, whatever rounding does", () => {
  expect(wilsonEnds(1, 6.506, 1.06).upper).toBe(1);
  expect(wilsonEnds(1 - 2 ** -53, 1.501, 1.01).upper).toBe(1);
  expect(wilsonEnds(0, 6.506, 1.06).lower).toBe(0);
  expect(wilsonEnds(0, 10, 0)).toEqual({ lower: 0, upper: 0 });
  expect(wilsonEnds(1, 10, 0)).toEqual({ lower: 1, upper: 1 });
});

test("takes every number of units over 0 and every quantile from 0, and no proportion over 1", () => {
  expect(wilsonEnds(0.5, 0.005, 1).upper).toBeLessThan(1);
  expect(wilsonEnds(0.3, 10, 0)).toEqual({ lower: 0.3, upper: 0.3 });
  expect(wilsonEnds(0.3, 10, 0.005).upper).toBeGreaterThan(0.3);
  expect(() => wilsonEnds(1.005, 10, 1)).toThrow(RangeError);
  expect(() => wilsonEnds(-0.005, 10, 1)).toThrow(RangeError);
  expect(() => wilsonEnds(0.5, 0, 1)).toThrow(RangeError);
  expect(() => wilsonEnds(0.5, 10, -0.005)).toThrow(RangeError);
});
