import { expect, test } from "vitest";
import { bisect } from "@/lib/statistics/bisection";

// Expected values: by hand.

test("halves what is left, each time at its middle", () => {
  const asked: number[] = [];
  bisect(
    (value) => {
      asked.push(value);
      return value > 0.3;
    },
    0,
    1,
  );
  expect(asked.slice(0, 5)).toEqual([0.5, 0.25, 0.375, 0.3125, 0.28125]);
});

test("keeps the relative precision of a small root, and ends where doubles run out", () => {
  expect(bisect((value) => value > 1e-300, 0, 1) / 1e-300).toBeCloseTo(1, 14);
  expect(bisect((value) => value > 2, 0, 5)).toBeCloseTo(2, 15);
});
