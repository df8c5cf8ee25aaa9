import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { expectedFrom, standardisedRatio } from "@/lib/statistics/standardised-ratio";

describe("A standardised ratio", () => {
  test("has Ulm's exact interval.", () => {
    // Published limits of 10 observed: Garwood 1936, Ulm 1990, 4.7954 and 18.3904.
    const found = standardisedRatio(10, 8, 0.95);
    expect(found?.ratio).toBe(1.25);
    // Computed with R 4.2.2: qgamma(.025, 10) / 8 and qgamma(.975, 11) / 8.
    expect(Math.abs((found?.interval.lower ?? 0) - 4.795388696132434 / 8)).toBeLessThan(1e-10);
    expect(Math.abs((found?.interval.upper ?? 0) - 18.39035604201778 / 8)).toBeLessThan(1e-10);
    expect(found?.interval).toMatchObject({ level: 0.95, method: "poisson-exact" });
  });

  test("of none observed is 0 with an upper end; of none expected it does not exist.", () => {
    expect(standardisedRatio(0, 2, 0.95)).toMatchObject({ ratio: 0, interval: { lower: 0 } });
    // −ln(.025) = 3.6889, Garwood 1936.
    expect(standardisedRatio(0, 2, 0.95)?.interval.upper).toBeCloseTo(-Math.log(0.025) / 2, 10);
    expect(standardisedRatio(0, 0, 0.95)).toBeUndefined();
    expect(standardisedRatio(3, 0, 0.95)).toBeUndefined();
  });

  test("covers what it says in 2,000 simulated years of one who is like everyone.", () => {
    const random = seededRandom(43);
    const rates = [0.01, 0.03, 0.08] as const;
    let covered = 0;
    for (let year = 0; year < 2_000; year += 1) {
      let observed = 0;
      for (const rate of rates)
        for (let unit = 0; unit < 80; unit += 1) if (random() < rate) observed += 1;
      const found = standardisedRatio(observed, 80 * (0.01 + 0.03 + 0.08), 0.95)?.interval;
      if (found && found.lower <= 1 && 1 <= found.upper) covered += 1;
    }
    expect(covered / 2_000).toBeGreaterThan(0.95);
    expect(covered / 2_000).toBeLessThan(0.99);
  });

  test("refuses what cannot be.", () => {
    for (const [observed, expected, level] of [
      [-1, 2, 0.95],
      [1.5, 2, 0.95],
      [1, -2, 0.95],
      [1, Number.NaN, 0.95],
      [1, 2, 1],
    ] as const) {
      expect(() => standardisedRatio(observed, expected, level)).toThrow(RangeError);
    }
  });
});

describe("What is expected of a person", () => {
  test("leaves out strata of under 20 reference units or nobody else's, and counts them.", () => {
    const found = expectedFrom([
      { units: 10, referenceEvents: 6, referenceUnits: 60 },
      { units: 4, referenceEvents: 5, referenceUnits: 19 },
      { units: 5, referenceEvents: 5, referenceUnits: 20 },
      { units: 30, referenceEvents: 9, referenceUnits: 30 },
      { units: 29, referenceEvents: 3, referenceUnits: 30 },
      { units: 0, referenceEvents: 9, referenceUnits: 90 },
      { units: 0, referenceEvents: 0, referenceUnits: 0 },
      { units: 1, referenceEvents: 2, referenceUnits: 100 },
    ]);
    // Computed by hand: 10·6/60 + 5·5/20 + 29·3/30 + 1·2/100.
    expect(found.expected).toBeCloseTo(1 + 1.25 + 2.9 + 0.02, 12);
    expect(found.used).toEqual([true, false, true, false, true, false, false, true]);
    expect(found.leftOut).toEqual({ strata: 2, units: 34 });
  });

  test("is 0 of nothing.", () => {
    expect(expectedFrom([])).toEqual({ expected: 0, used: [], leftOut: { strata: 0, units: 0 } });
  });

  const share = fc
    .integer({ min: 1, max: 40 })
    .chain((units) =>
      fc.record({ units: fc.constant(units), events: fc.integer({ min: 0, max: units }) }),
    );
  const stratum = fc.tuple(share, share, share);

  test("adds up to what was observed over everyone of the reference.", () => {
    fc.assert(
      fc.property(fc.array(stratum, { maxLength: 8 }), (strata) => {
        const total = (of: "units" | "events", people: { units: number; events: number }[]) =>
          people.reduce((sum, person) => sum + person[of], 0);
        const large = strata.filter((people) => total("units", people) >= 20);
        const observed = large.reduce((sum, people) => sum + total("events", people), 0);
        const expected = [0, 1, 2].map((person) => {
          const own = strata.map((people) =>
            Object.freeze({
              units: people[person]?.units ?? 0,
              referenceEvents: total("events", people),
              referenceUnits: total("units", people),
            }),
          );
          const found = expectedFrom(Object.freeze(own));
          expect(found.leftOut.strata).toBe(strata.length - large.length);
          expect(expectedFrom(own.toReversed()).used.toReversed()).toEqual(found.used);
          return found.expected;
        });
        expect(expected.reduce((sum, one) => sum + one, 0)).toBeCloseTo(observed, 9);
      }),
      { seed: 44 },
    );
  });

  test("refuses counts that cannot be.", () => {
    for (const [units, referenceEvents, referenceUnits] of [
      [1, 31, 30],
      [31, 1, 30],
      [-1, 1, 30],
      [0.5, 1, 30],
      [1, Number.NaN, 30],
    ] as const) {
      expect(() => expectedFrom([{ units, referenceEvents, referenceUnits }])).toThrow(RangeError);
    }
  });
});
