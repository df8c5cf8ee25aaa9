import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { betaBinomialFit, reliability, shrunkenRate } from "@/lib/statistics/shrinkage";

// Weil 1970, from memory; the published fits confirm them.
const control = paired(
  [13, 12, 9, 9, 8, 8, 12, 11, 9, 9, 8, 11, 4, 5, 7, 7],
  [13, 12, 9, 9, 8, 8, 13, 12, 10, 10, 9, 13, 5, 7, 10, 10],
);
const treated = paired(
  [12, 11, 10, 9, 10, 9, 9, 8, 8, 4, 7, 4, 5, 3, 3, 0],
  [12, 11, 10, 9, 11, 10, 10, 9, 9, 5, 9, 7, 10, 6, 10, 7],
);
const of100 = (...events: number[]) =>
  paired(
    events,
    events.map(() => 100),
  );

describe("The beta-binomial fit", () => {
  test("agrees with the published fits of Weil's litters.", () => {
    // Published for these data: mu .898 and .740, theta .021 and .465.
    expect(betaBinomialFit(control)?.mu).toBeCloseTo(0.898, 3);
    expect(betaBinomialFit(control)?.theta).toBeCloseTo(0.021, 3);
    expect(betaBinomialFit(treated)?.mu).toBeCloseTo(0.74, 3);
    expect(betaBinomialFit(treated)?.theta).toBeCloseTo(0.465, 3);
  });

  // Computed with mpmath.findroot (40 digits) on both slopes of the likelihood in the docstring. Among them a mean near
  // each end, and variation close to none.
  for (const [name, units, mu, theta, logLikelihood] of [
    ["the control litters", control, 0.8979759614543115, 0.020612752643607412, -51.69143141113713],
    ["the treated litters", treated, 0.7400067549336053, 0.46506357541947957, -64.9901616546825],
    [
      "a rare event",
      of100(5, 0, 0, 0, 0, 0),
      0.008063271121459433,
      0.10420365393846681,
      -23.7200486159662,
    ],
    [
      "a pooled rate of 1 %",
      of100(5, 0, 0, 0, 0),
      0.009692680397594081,
      0.0990794034173965,
      -23.506112066103114,
    ],
    [
      "a common event",
      of100(98, 100, 100, 100, 100, 100),
      0.9966779031513647,
      0.01744224590694635,
      -12.740271843557872,
    ],
    [
      "slight variation",
      of100(10, 22, 14, 20),
      0.16498128528048148,
      0.0070347889349221425,
      -178.82772402220834,
    ],
    [
      "hardly any variation",
      paired([1, 10], [5, 16]),
      0.5232041070240422,
      0.0007172726804705196,
      -14.532268982976804,
    ],
  ] as const) {
    test(`agrees with mpmath on ${name}.`, () => {
      const found = betaBinomialFit(units);
      expect(Math.abs((found?.mu ?? 0) - mu)).toBeLessThan(1e-10);
      expect(Math.abs((found?.theta ?? 0) - theta)).toBeLessThan(1e-10);
      expect(Math.abs((found?.logLikelihood ?? 0) - logLikelihood)).toBeLessThan(1e-9);
    });
  }

  test("says no extra variation where units are as alike as chance would have them, or more.", () => {
    const alike = betaBinomialFit(paired([2, 2, 2], [10, 10, 10]));
    expect(alike).toMatchObject({ mu: 0.2, theta: 0 });
    // The binomial log-likelihood without coefficients, by hand.
    expect(alike?.logLikelihood).toBeCloseTo(6 * Math.log(0.2) + 24 * Math.log(0.8), 12);
    expect(betaBinomialFit(paired([4], [9]))).toMatchObject({ mu: 4 / 9, theta: 0 });
    expect(betaBinomialFit(paired([0, 0], [9, 4]))).toEqual({ mu: 0, theta: 0, logLikelihood: 0 });
    expect(betaBinomialFit(paired([9, 4], [9, 4]))).toEqual({ mu: 1, theta: 0, logLikelihood: 0 });
    expect(betaBinomialFit([])).toBeUndefined();
    expect(betaBinomialFit(paired([0], [0]))).toBeUndefined();
  });

  test("spreads without bound where every unit is all or nothing.", () => {
    const found = betaBinomialFit(paired([0, 7, 0, 9], [5, 7, 8, 9]));
    // As theta grows the likelihood comes to that of four single draws, mu their share.
    expect(found?.mu).toBeCloseTo(0.5, 8);
    expect(found?.theta).toBeGreaterThan(2 ** 31);
    expect(found?.logLikelihood).toBeCloseTo(4 * Math.log(0.5), 6);
  });

  const unit = fc
    .integer({ min: 0, max: 30 })
    .chain((units) =>
      fc.record({ events: fc.integer({ min: 0, max: units }), units: fc.constant(units) }),
    );
  const several = fc.array(unit, { minLength: 2, maxLength: 12 });

  test("does not depend on order or on those without units, mirrors, and beats no extra variation.", () => {
    fc.assert(
      fc.property(several, (units) => {
        const found = betaBinomialFit(Object.freeze(units.map((one) => Object.freeze(one))));
        if (!found) {
          expect(units.every((one) => one.units === 0)).toBe(true);
          return;
        }
        expect(betaBinomialFit([...units.toReversed(), { events: 0, units: 0 }])).toEqual(found);
        const mirrored = betaBinomialFit(
          units.map((one) => ({ ...one, events: one.units - one.events })),
        );
        expect(mirrored?.mu).toBeCloseTo(1 - found.mu, 6);
        expect(mirrored?.logLikelihood).toBeCloseTo(found.logLikelihood, 8);
        const events = units.reduce((sum, one) => sum + one.events, 0);
        const all = units.reduce((sum, one) => sum + one.units, 0);
        const term = (count: number) => (count === 0 ? 0 : count * Math.log(count / all));
        expect(found.logLikelihood).toBeGreaterThanOrEqual(
          term(events) + term(all - events) - 1e-9,
        );
      }),
      { seed: 45 },
    );
  });

  test("finds mu and theta again, and shrinks towards the truth, in 40 simulated clinicians and 100 years.", () => {
    const random = seededRandom(46);
    let [mu, theta, raw, shrunken] = [0, 0, 0, 0];
    for (let year = 0; year < 100; year += 1) {
      // Rates even between 0 and 1 are beta(1, 1): mu ½, theta ½.
      const people = Array.from({ length: 40 }, () => simulated(random, random()));
      const fit = betaBinomialFit(people);
      if (!fit) throw new Error("there are units");
      mu += fit.mu / 100;
      theta += fit.theta / 100;
      for (const { events, units, rate } of people) {
        raw += (events / units - rate) ** 2;
        shrunken += (shrunkenRate(events, units, fit) - rate) ** 2;
      }
    }
    expect(Math.abs(mu - 0.5)).toBeLessThan(0.02);
    expect(Math.abs(theta - 0.5)).toBeLessThan(0.05);
    expect(shrunken).toBeLessThan(0.9 * raw);
  });
});

describe("A shrunken rate and its reliability", () => {
  test("are (x + mu/theta)/(n + 1/theta) and n/(n + 1/theta).", () => {
    // Computed by hand: mu/theta = 2, 1/theta = 10: (5 + 2)/(20 + 10) and 20/30.
    expect(shrunkenRate(5, 20, { mu: 0.2, theta: 0.1 })).toBeCloseTo(7 / 30, 14);
    expect(reliability(20, { theta: 0.1 })).toBeCloseTo(2 / 3, 14);
    expect(shrunkenRate(0, 0, { mu: 0.2, theta: 0.1 })).toBe(0.2);
    expect(reliability(0, { theta: 0.1 })).toBe(0);
  });

  test("are mu and 0 where there is no extra variation.", () => {
    expect(shrunkenRate(5, 20, { mu: 0.2, theta: 0 })).toBe(0.2);
    expect(reliability(20, { theta: 0 })).toBe(0);
  });

  test("weigh own and common rate: the reliability is the share of the own.", () => {
    const fit = fc.record({
      mu: fc.double({ min: 0, max: 1, noNaN: true }),
      theta: fc.double({ min: 0, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 50 }),
        fc.integer({ min: 0, max: 50 }),
        fit,
        (x, rest, spread) => {
          const n = x + rest;
          fc.pre(n > 0);
          const own = reliability(n, spread);
          expect(shrunkenRate(x, n, spread)).toBeCloseTo((own * x) / n + (1 - own) * spread.mu, 12);
          expect(reliability(n + 1, spread)).toBeGreaterThanOrEqual(own);
        },
      ),
      { seed: 47 },
    );
  });

  test("refuse what cannot be.", () => {
    expect(() => shrunkenRate(3, 2, { mu: 0.2, theta: 0.1 })).toThrow(RangeError);
    expect(() => reliability(-1, { theta: 0.1 })).toThrow(RangeError);
    expect(() => reliability(1.5, { theta: 0.1 })).toThrow(RangeError);
    for (const [events, units] of [
      [3, 2],
      [-1, 2],
      [0.5, 2],
      [1, Number.NaN],
    ] as const) {
      expect(() => betaBinomialFit([{ events, units }])).toThrow(RangeError);
    }
  });
});

function paired(events: readonly number[], units: readonly number[]) {
  return events.map((count, at) => ({ events: count, units: units[at] as number }));
}

function simulated(random: () => number, rate: number) {
  const units = 2 + Math.floor(random() * 10);
  let events = 0;
  for (let unit = 0; unit < units; unit += 1) if (random() < rate) events += 1;
  return { events, units, rate };
}
