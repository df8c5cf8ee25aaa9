import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runSignals } from "@/lib/statistics/run-chart";

/** Points beside a centre of 0, one a letter: above, below, on it, or a gap. */
const points = (letters: string) =>
  [...letters].map((letter) => ({ a: 1, b: -1, o: 0 })[letter] ?? null);

describe("The limits of a run chart", () => {
  // Anhøj & Olesen 2014: longest run and crossings for 10, 20, 24 and 40 useful points. For 16, 74,
  // 90 and 91 computed with R 4.2.2: round(log2(n) + 3), qbinom(.05, n - 1, .5).
  for (const [n, longestRunLimit, crossingsLimit] of [
    [10, 6, 2],
    [20, 7, 6],
    [24, 8, 8],
    [40, 8, 14],
    [16, 7, 4],
    [74, 9, 29],
    [90, 9, 37],
    [91, 10, 37],
  ] as const) {
    test(`are ${longestRunLimit} and ${crossingsLimit} for ${n} useful points.`, () => {
      const found = runSignals(points("ab".repeat(n).slice(0, n)), 0);
      expect(found).toEqual({
        useful: n,
        longestRun: 1,
        longestRunLimit,
        crossings: n - 1,
        crossingsLimit,
        longRun: false,
        fewCrossings: false,
        signal: false,
      });
    });
  }
});

describe("The signals of a run chart", () => {
  test("come with a run longer than its limit, not with one that equals it.", () => {
    const seven = runSignals(points("aaaaaaabababababbaba"), 0);
    expect(seven).toMatchObject({ useful: 20, longestRun: 7, longRun: false, signal: false });
    const eight = runSignals(points("aaaaaaaabababababbab"), 0);
    expect(eight).toMatchObject({ longestRun: 8, longRun: true, fewCrossings: false });
    expect(eight.signal).toBe(true);
  });

  test("come with fewer crossings than their limit, not with as many.", () => {
    expect(runSignals(points("aaaabbbbaaaabbbbaabb"), 0)).toMatchObject({
      crossings: 5,
      longRun: false,
      fewCrossings: true,
      signal: true,
    });
    expect(runSignals(points("aaaabbbbaaaabbbbaaba"), 0)).toMatchObject({
      crossings: 6,
      fewCrossings: false,
      signal: false,
    });
  });

  test("skip gaps and points on the centre line, which neither count nor end a run.", () => {
    expect(runSignals(points("aa-ao-abb"), 0)).toMatchObject({
      useful: 6,
      longestRun: 4,
      crossings: 1,
    });
  });

  test("do not come under ten useful points.", () => {
    expect(runSignals(points("aaaaaaaaaooo---"), 0)).toEqual({
      useful: 9,
      longestRun: 9,
      longestRunLimit: undefined,
      crossings: 0,
      crossingsLimit: undefined,
      longRun: false,
      fewCrossings: false,
      signal: false,
    });
    expect(runSignals([], 3)).toMatchObject({ useful: 0, longestRun: 0, crossings: 0 });
  });

  test("do not change when time runs backwards or the scale is turned over.", () => {
    const value = fc.option(fc.integer({ min: -5, max: 5 }), { nil: null });
    fc.assert(
      fc.property(fc.array(value, { maxLength: 60 }), fc.integer({ min: -2, max: 2 }), (v, at) => {
        const found = runSignals(Object.freeze(v), at);
        expect(runSignals(v.toReversed(), at)).toEqual(found);
        const turned = v.map((one) => (one === null ? null : -one));
        expect(runSignals(turned, -at)).toEqual(found);
      }),
      { seed: 15 },
    );
  });

  test("are refused for what is no number.", () => {
    expect(() => runSignals([1, Number.NaN], 0)).toThrow(RangeError);
    expect(() => runSignals([1, Number.POSITIVE_INFINITY], 0)).toThrow(RangeError);
    expect(() => runSignals([1], Number.NaN)).toThrow(RangeError);
  });
});
