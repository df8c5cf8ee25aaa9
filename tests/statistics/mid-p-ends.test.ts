import { expect, test } from "vitest";
import { midPEnds } from "@/lib/statistics/mid-p-ends";

// Expected values: by hand from the closed forms, the project's own symmetry, and one computed with R.

test("without events keeps every digit of a small upper end: 1 − .05^(1/n)", () => {
  const n = 10_000_000;
  const share = -Math.log(0.05) / n;
  // 1 − e^−s = s − s²/2 + s³/6 for a small s.
  const upper = share - share ** 2 / 2 + share ** 3 / 6;
  expect(midPEnds(0, n, 0.025).upper / upper).toBeCloseTo(1, 14);
  expect(midPEnds(n, n, 0.025)).toEqual({ lower: expect.closeTo(1 - upper, 15), upper: 1 });
});

test("finds roots close to 0 and to 1, each leaving the tail", () => {
  for (const [events, units] of [
    [1, 100_000],
    [99_999, 100_000],
    [999, 1_000],
    [3, 4],
  ] as const) {
    const { lower, upper } = midPEnds(events, units, 0.025);
    const mirrored = midPEnds(units - events, units, 0.025);
    expect(lower).toBeGreaterThan(0);
    expect(upper).toBeLessThan(1);
    expect(lower).toBeLessThan(events / units);
    expect(upper).toBeGreaterThan(events / units);
    expect(lower + mirrored.upper).toBeCloseTo(1, 14);
  }
  // Computed (R 4.2.2: uniroot on half of pbinom(0:1, 1e5, p, lower.tail = FALSE), summed, less .025).
  expect(midPEnds(1, 100_000, 0.025).lower * 100_000).toBeCloseTo(0.0500203442394, 12);
});
