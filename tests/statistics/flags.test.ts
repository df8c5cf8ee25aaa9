import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { benjaminiHochberg } from "@/lib/statistics/false-discovery";
import { type FigureToFlag, flags } from "@/lib/statistics/flags";
import { clopperPearson } from "@/lib/statistics/proportion-interval";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { tailProbability } from "@/lib/statistics/tail-probability";

const lone = (theta: number) => [{ events: 5, units: 100, theta, designEffect: 1 }];

describe("Flags", () => {
  // Computed with R 4.2.2 (uniroot over the mid-P tail): the θ at which 5 of 100 have this p.
  for (const [theta, p, tier] of [
    [0.008549572784506718, 0.00199, "look-first"],
    [0.00856881681566508, 0.00201, "look"],
    [0.018518559375611483, 0.0497, "look"],
    [0.018577236907483433, 0.0503, null],
  ] as const) {
    test(`put a lone figure of p = ${p} in the tier ${tier}.`, () => {
      const found = flags(lone(theta));
      expect(found.figures[0]).toMatchObject({ direction: "higher", tier });
      expect(Math.abs((found.figures[0]?.p ?? 0) - p)).toBeLessThan(1e-9);
      expect(found.figures[0]?.adjusted).toBe(found.figures[0]?.p);
    });
  }

  test("divide counts by the design effect, which narrows nothing under 1.", () => {
    // Computed with R 4.2.2, as in tail-probability.test.ts: 5 of 100 at 1 %, each over 1.2.
    const found = flags([{ events: 5, units: 100, theta: 0.01, designEffect: 1.2 }]).figures[0];
    expect(Math.abs((found?.p ?? 0) - 2 * 0.004262405126462917)).toBeLessThan(1e-12);
    for (const designEffect of [0, 0.4, 1]) {
      const plain = flags([{ events: 5, units: 100, theta: 0.01, designEffect }]).figures[0];
      expect(plain?.p).toBe(tailProbability(5, 100, 0.01).p);
    }
  });

  test("tell better from worse, by the direction alone.", () => {
    const page = flags([
      { events: 20, units: 100, theta: 0.1, designEffect: 1 },
      { events: 1, units: 100, theta: 0.1, designEffect: 1 },
    ]);
    expect(page.figures).toMatchObject([
      { direction: "higher", tier: "look" },
      { direction: "lower", tier: "look-first" },
    ]);
  });

  test("count figures with units only, and print what chance alone would put outside.", () => {
    const page = flags([...lone(0.0085), { events: 0, units: 0, theta: 0.0085, designEffect: 2 }]);
    expect(page.m).toBe(1);
    expect(page.chance).toBe(0.05);
    expect(page.figures[1]).toBeNull();
    expect(flags([])).toEqual({ m: 0, chance: 0, figures: [] });
  });

  test("obey other levels.", () => {
    expect(flags(lone(0.018), { look: 0.02, lookFirst: 0.005 }).figures[0]?.tier).toBeNull();
    expect(flags(lone(0.0085), { look: 0.02, lookFirst: 0.005 }).figures[0]?.tier).toBe(
      "look-first",
    );
  });

  const figure = fc.integer({ min: 0, max: 400 }).chain((units) =>
    fc.record({
      events: fc.integer({ min: 0, max: units }),
      units: fc.constant(units),
      theta: fc.constant(0.05),
      designEffect: fc.double({ min: 0.5, max: 3, noNaN: true }),
    }),
  );

  test("adjust over all figures of the page, in any order.", () => {
    fc.assert(
      fc.property(fc.array(figure, { maxLength: 25 }), (page) => {
        const found = flags(Object.freeze(page.map((one) => Object.freeze(one))));
        const counted = found.figures.filter((one) => one !== null);
        expect(counted.map((one) => one.adjusted)).toEqual(
          benjaminiHochberg(counted.map((one) => one.p)),
        );
        expect(found.m).toBe(page.filter((one) => one.units > 0).length);
        expect(flags(page.toReversed()).figures.toReversed()).toEqual(found.figures);
      }),
      { seed: 10 },
    );
  });

  test("refuse what cannot be.", () => {
    const [one] = lone(0.1) as [FigureToFlag];
    for (const wrong of [
      { events: 101 },
      { events: 0.5 },
      { theta: 1.005 },
      { theta: Number.NaN },
      { designEffect: -0.005 },
      { designEffect: Number.NaN },
      { designEffect: Number.POSITIVE_INFINITY },
    ]) {
      expect(() => flags([{ ...one, ...wrong }])).toThrow(RangeError);
    }
    for (const [look, lookFirst] of [
      [0.05, 0],
      [0.05, 0.06],
      [1, 0.05],
      [1.005, 0.05],
      [Number.NaN, 0.05],
    ] as const) {
      expect(() => flags([one], { look, lookFirst })).toThrow(RangeError);
    }
  });
});

describe("The promise of a page of 20 clinicians without any difference", () => {
  for (const [rate, seed] of [
    [0.01, 11],
    [0.03, 12],
    [0.9, 13],
  ] as const) {
    test(`is kept at a rate of ${rate}, in 1,000 simulated pages.`, () => {
      const random = seededRandom(seed);
      let look = 0;
      let lookFirst = 0;
      for (let page = 0; page < 1_000; page += 1) {
        const tiers = flags(simulatedPage(random, rate)).figures.map((one) => one?.tier);
        if (tiers.some((tier) => tier)) look += 1;
        if (tiers.includes("look-first")) lookFirst += 1;
      }
      // Not refuted: the exact interval of the share begins under what is promised.
      expect(clopperPearson(look, 1_000, 0.95)?.lower).toBeLessThanOrEqual(0.05);
      expect(clopperPearson(lookFirst, 1_000, 0.95)?.lower).toBeLessThanOrEqual(0.002);
    });
  }

  test("is not kept by never flagging: one of five times the others' rate is found.", () => {
    const random = seededRandom(14);
    let found = 0;
    for (let page = 0; page < 100; page += 1) {
      const [, ...others] = simulatedPage(random, 0.03) as [FigureToFlag, ...FigureToFlag[]];
      const elevated = { events: 30, units: 200, theta: 0, designEffect: 1 };
      if (flags(pooled([elevated, ...others])).figures[0]?.tier === "look-first") found += 1;
    }
    expect(found).toBe(100);
  });
});

function simulatedPage(random: () => number, rate: number): FigureToFlag[] {
  const page = Array.from({ length: 20 }, () => {
    const units = 20 + Math.floor(random() * 100);
    let events = 0;
    for (let unit = 0; unit < units; unit += 1) if (random() < rate) events += 1;
    return { events, units, theta: 0, designEffect: 1 };
  });
  return pooled(page);
}

function pooled(page: FigureToFlag[]): FigureToFlag[] {
  const events = page.reduce((all, one) => all + one.events, 0);
  const units = page.reduce((all, one) => all + one.units, 0);
  return page.map((one) => ({ ...one, theta: events / units }));
}
