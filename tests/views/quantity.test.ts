import { describe, expect, test } from "vitest";
import { count, decimal, duration, percent, quantity, setShare } from "@/lib/views/quantity";

// Expected words: computed by hand from the rules in the functions' docstrings. The sign − is U+2212 and the space
// between thousands U+202F, as the International System of Units (BIPM brochure, 9th edition, 5.4.4) groups digits.
const thin = "\u202f";

describe("decimal", () => {
  test.each([
    [0, 1, "0.0"],
    [-0.04, 1, "0.0"],
    [-0.05, 1, "−0.1"],
    [1.25, 0, "1"],
    [-12.5, 1, "−12.5"],
  ])("%d with %d decimals is %s", (value, decimals, words) => {
    expect(decimal(value, decimals)).toBe(words);
  });
});

describe("count", () => {
  test.each([
    [0, "0"],
    [999, "999"],
    [1000, `1${thin}000`],
    [1234567, `1${thin}234${thin}567`],
    [-1000, `−1${thin}000`],
  ])("%d is %s", (value, words) => {
    expect(count(value)).toBe(words);
  });
});

describe("percent", () => {
  test.each([
    [0, "0 %"],
    [1, "100 %"],
    [0.00001, "under 0.01 %"],
    [0.0001, "0.01 %"],
    [0.00247, "0.25 %"],
    [0.0999, "9.99 %"],
    [0.09999, "10.0 %"],
    [0.1, "10.0 %"],
    [0.9994, "over 99.9 %"],
    [0.999, "99.9 %"],
    [0.99999, "over 99.9 %"],
    [-0.05, "−5.00 %"],
    [-0.00001, "−under 0.01 %"],
  ])("%d is %s", (share, words) => {
    expect(percent(share)).toBe(words);
  });

  test("what is neither none nor all is never shown as 0 or 100", () => {
    for (const share of [1e-12, 1e-6, 0.004, 0.5, 0.995, 0.99951, 1 - 1e-9]) {
      expect(percent(share)).not.toMatch(/^(0(\.0+)?|100(\.0+)?) %$/);
    }
  });
});

describe("setShare", () => {
  test.each([
    [0.95, "95 %"],
    [1, "100 %"],
    [0.975, "97.5 %"],
    [0.07, "7 %"],
  ])("%d is %s", (share, words) => {
    expect(setShare(share)).toBe(words);
  });
});

describe("duration", () => {
  test.each([
    [0, "0 s"],
    [0.01, "under 0.1 s"],
    [0.05, "0.1 s"],
    [12, "12 s"],
    [12.34, "12.3 s"],
    [59.94, "59.9 s"],
    [59.96, "1 min 0 s"],
    [60, "1 min 0 s"],
    [289, "4 min 49 s"],
    [3599, "59 min 59 s"],
    [3599.6, "1 h 0 min"],
    [3659, "1 h 1 min"],
    [7200, "2 h 0 min"],
    [-90, "−1 min 30 s"],
  ])("%d seconds are %s", (seconds, words) => {
    expect(duration(seconds)).toBe(words);
  });
});

describe("quantity", () => {
  test.each([
    [0, "mL", "0.0 mL"],
    [0.01, "mL", "under 0.1 mL"],
    [18.62, "mL", "18.6 mL"],
    [99.94, "mL", "99.9 mL"],
    [99.96, "mL", "100 mL"],
    [1234.5, "mL", `1${thin}235 mL`],
    [-2.5, "mL", "−2.5 mL"],
    [289, "s", "4 min 49 s"],
  ])("%d %s is %s", (value, unit, words) => {
    expect(quantity(value, unit)).toBe(words);
  });
});
