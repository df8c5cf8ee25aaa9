import { expect, test } from "vitest";
import { canonicalJson } from "@/lib/views/canonical-json";

// The sample of RFC 8785 (JSON Canonicalization Scheme), section 3.2.2, with its canonical form from section 3.2.3, and the order of
// keys in its section 3.2.3. Its first number has more digits than we keep: 12, by our own rule.

test("the sample is written as published, but for digits beyond the twelfth", () => {
  const sample = JSON.parse(String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`);
  expect(canonicalJson(sample)).toBe(
    String.raw`{"literals":[null,true,false],"numbers":[333333333.333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  );
});

test("keys come in the order of their UTF-16 code units", () => {
  const keys = {
    "\u20ac": "Euro Sign",
    "\r": "Carriage Return",
    "\ufb33": "Hebrew Letter Dalet With Dagesh",
    "1": "One",
    "\ud83d\ude00": "Emoji: Grinning Face",
    "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis",
  };
  expect(
    Object.values(
      JSON.parse(
        `[${canonicalJson(keys)
          .slice(1, -1)
          .replaceAll(/"[^"]*":/g, "")}]`,
      ),
    ),
  ).toEqual([
    "Carriage Return",
    "One",
    "Control",
    "Latin Small Letter O With Diaeresis",
    "Euro Sign",
    "Emoji: Grinning Face",
    "Hebrew Letter Dalet With Dagesh",
  ]);
});

test("sums in another order, a negative zero and what is undefined make no difference", () => {
  expect(0.1 + 0.2).not.toBe(0.3);
  expect(canonicalJson({ sum: 0.1 + 0.2, none: undefined, zero: -0 })).toBe(
    canonicalJson({ zero: 0, sum: 0.3 }),
  );
  expect(canonicalJson({ day: new Date("2026-10-02T08:30:00Z") })).toBe(
    '{"day":"2026-10-02T08:30:00.000Z"}',
  );
});

test("a number that JSON cannot write is refused", () => {
  for (const odd of [Number.NaN, Number.POSITIVE_INFINITY])
    expect(() => canonicalJson({ odd })).toThrow(/not allowed/);
});
