import { describe, expect, test } from "vitest";
import { seededRandom } from "@/lib/statistics/seeded-random";

describe("The seeded generator", () => {
  test("is minstd_rand: from 1 the 10,000th number is 399268537 (C++ standard, [rand.predef]).", () => {
    const random = seededRandom(1);
    let last = 0;
    for (let draw = 0; draw < 10_000; draw += 1) last = random();
    expect(last).toBe(399_268_537 / 2_147_483_647);
  });

  test("repeats itself from a seed and differs between seeds.", () => {
    const draws = (seed: number) => Array.from({ length: 20 }, seededRandom(seed));
    expect(draws(5)).toEqual(draws(5));
    expect(draws(5)).not.toEqual(draws(6));
  });

  test("fills (0, 1) evenly: 100,000 draws in ten parts, χ² with 9 under its 99.9 % quantile.", () => {
    const random = seededRandom(21);
    const parts = new Array<number>(10).fill(0);
    for (let draw = 0; draw < 100_000; draw += 1) {
      const part = Math.floor(random() * 10);
      parts[part] = (parts[part] ?? Number.NaN) + 1;
    }
    const distance = parts.reduce((all, count) => all + (count - 10_000) ** 2 / 10_000, 0);
    // Computed with R 4.2.2: qchisq(.999, 9) = 27.88.
    expect(distance).toBeLessThan(27.88);
  });

  test("refuses what is no seed.", () => {
    for (const seed of [0, -1, 1.5, 2_147_483_647, Number.NaN]) {
      expect(() => seededRandom(seed)).toThrow(RangeError);
    }
    expect(seededRandom(2_147_483_646)()).toBeGreaterThan(0);
  });
});
