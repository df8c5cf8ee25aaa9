import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clusterSums } from "@/lib/statistics/cluster-sums";
import { clusteredProportion, clusteredProportionOf } from "@/lib/statistics/clustered-proportion";
import { wilson } from "@/lib/statistics/proportion-interval";
import { seededRandom } from "@/lib/statistics/seeded-random";

// Weil 1970, from memory: survivors and size of litters of rats; the published design effects confirm them.
const control = paired(
  [13, 12, 9, 9, 8, 8, 12, 11, 9, 9, 8, 11, 4, 5, 7, 7],
  [13, 12, 9, 9, 8, 8, 13, 12, 10, 10, 9, 13, 5, 7, 10, 10],
);
const treated = paired(
  [12, 11, 10, 9, 10, 9, 9, 8, 8, 4, 7, 4, 5, 3, 3, 0],
  [12, 11, 10, 9, 11, 10, 10, 9, 9, 5, 9, 7, 10, 6, 10, 7],
);

describe("A clustered proportion", () => {
  // Published: Rao & Scott 1992, Biometrics 48:577. The rest computed with R 4.2.2, by the formulas in the docstring;
  // the standard error of the treated also by survey::svymean over svydesign(~litter).
  for (const [name, litters, published, expected] of [
    [
      "control",
      control,
      1.2325,
      [
        0.8987341772151899, 0.026644721525019642, 1.2324953943067687, 128.19520521524458,
        0.8276313690260186, 0.942542973412779,
      ],
    ],
    [
      "treated",
      treated,
      3.9529,
      [
        0.7724137931034483, 0.06922607823121289, 3.9528606259640737, 36.68229510739088,
        0.6000083742579952, 0.8847786682387427,
      ],
    ],
  ] as const) {
    test(`agrees with Rao & Scott, and R, on the ${name} litters.`, () => {
      const found = clusteredProportion(litters, 0.95);
      expect(found?.designEffect).toBeCloseTo(published, 4);
      expect(found?.interval).toMatchObject({ level: 0.95, method: "clustered-wilson" });
      const numbers = [
        found?.estimate,
        found?.standardError,
        found?.designEffect,
        found?.effectiveN,
        found?.interval?.lower,
        found?.interval?.upper,
      ];
      for (const [at, number] of numbers.entries()) {
        expect(Math.abs((number ?? Number.NaN) - (expected[at] as number))).toBeLessThan(1e-10);
      }
    });
  }

  test("at none or all takes whole clusters, and knows no design effect.", () => {
    const none = clusteredProportion(paired([0, 0, 0, 0, 0, 0, 0], [3, 1, 2, 4, 1, 1, 5]), 0.95);
    expect(none).toMatchObject({
      estimate: 0,
      standardError: 0,
      designEffect: undefined,
      effectiveN: undefined,
    });
    // Computed with R 4.2.2: qbeta(.975, 1, 7).
    expect(none?.interval).toMatchObject({
      lower: 0,
      level: 0.95,
      method: "clustered-clopper-pearson",
    });
    expect(none?.interval?.upper).toBeCloseTo(0.4096163972250034, 12);
    const all = clusteredProportion(paired([4, 1, 7], [4, 1, 7]), 0.95);
    // Computed with R 4.2.2: qbeta(.025, 3, 1).
    expect(all).toMatchObject({ estimate: 1, standardError: 0, interval: { upper: 1 } });
    expect(all?.interval?.lower).toBeCloseTo(0.2924017738212866, 12);
  });

  test("is nothing without units, and an estimate alone under two clusters.", () => {
    expect(clusteredProportion([], 0.95)).toBeUndefined();
    expect(clusteredProportion([{ events: 0, units: 0 }], 0.95)).toBeUndefined();
    for (const events of [0, 2, 8]) {
      expect(
        clusteredProportion(
          [
            { events, units: 8 },
            { events: 0, units: 0 },
          ],
          0.95,
        ),
      ).toEqual({
        estimate: events / 8,
        standardError: undefined,
        designEffect: undefined,
        effectiveN: undefined,
        interval: undefined,
      });
    }
    expect(
      clusteredProportion(
        [
          { events: 1, units: 2 },
          { events: 2, units: 3 },
        ],
        0.95,
      )?.interval,
    ).toBeDefined();
  });

  test("of single units has a design effect of n/(n − 1), and is wider than plain Wilson.", () => {
    const single = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 3, maxLength: 60 });
    fc.assert(
      fc.property(single, (outcomes) => {
        const [x, n] = [outcomes.reduce((all, one) => all + one, 0), outcomes.length];
        fc.pre(x > 0 && x < n);
        const found = clusteredProportion(
          outcomes.map((events) => ({ events, units: 1 })),
          0.95,
        );
        expect(Math.abs((found?.designEffect ?? 0) - n / (n - 1))).toBeLessThan(1e-12);
        expect(Math.abs((found?.effectiveN ?? 0) - (n - 1))).toBeLessThan(1e-9);
        expect(found?.interval?.lower).toBeLessThan(wilson(x, n, 0.95)?.lower as number);
        expect(found?.interval?.upper).toBeGreaterThan(wilson(x, n, 0.95)?.upper as number);
      }),
      { seed: 34 },
    );
  });

  test("counts no more units than there are where clusters are more even than chance.", () => {
    const found = clusteredProportion(paired([2, 2, 3, 2], [4, 4, 5, 4]), 0.95);
    expect(found?.designEffect).toBeLessThan(0.1);
    expect(found?.effectiveN).toBe(17);
  });

  const cluster = fc
    .integer({ min: 0, max: 12 })
    .chain((units) =>
      fc.record({ events: fc.integer({ min: 0, max: units }), units: fc.constant(units) }),
    );

  test("is the same from sums, in any order, and mirrored for what did not happen.", () => {
    fc.assert(
      fc.property(fc.array(cluster, { maxLength: 30 }), (clusters) => {
        const frozen = Object.freeze(clusters.map((one) => Object.freeze(one)));
        const found = clusteredProportion(frozen, 0.9);
        expect(clusteredProportion(frozen.toReversed(), 0.9)).toEqual(found);
        expect(clusteredProportionOf(clusterSums(frozen), 0.9)).toEqual(found);
        const mirrored = clusteredProportion(
          frozen.map(({ events, units }) => ({ events: units - events, units })),
          0.9,
        );
        if (found?.interval === undefined) {
          expect(mirrored?.interval).toBeUndefined();
          return;
        }
        const { lower, upper } = found.interval;
        expect(Math.abs((mirrored?.interval?.lower ?? 9) - (1 - upper))).toBeLessThan(1e-10);
        expect(Math.abs((mirrored?.interval?.upper ?? 9) - (1 - lower))).toBeLessThan(1e-10);
        expect(0 <= lower && lower <= found.estimate && found.estimate <= upper && upper <= 1).toBe(
          true,
        );
        expect(lower).toBeLessThan(upper);
      }),
      { seed: 35 },
    );
  });

  test("covers what it says in 2,000 simulated audits of 30 patients, where plain Wilson does not.", () => {
    const random = seededRandom(36);
    let clustered = 0;
    let plain = 0;
    for (let audit = 0; audit < 2_000; audit += 1) {
      // Patients of .6 and of 1, as many of each: .8 among all.
      const patients = Array.from({ length: 30 }, () => drawn(random, random() < 0.5 ? 0.6 : 1));
      const { events, units } = clusterSums(patients);
      if (holds(clusteredProportion(patients, 0.95)?.interval, 0.8)) clustered += 1;
      if (holds(wilson(events, units, 0.95), 0.8)) plain += 1;
    }
    expect(clustered / 2_000).toBeGreaterThan(0.94);
    expect(clustered / 2_000).toBeLessThan(0.97);
    expect(plain / 2_000).toBeLessThan(0.9);
  });

  test("refuses a level or counts that cannot be, also without units.", () => {
    for (const level of [0, 1, Number.NaN]) {
      expect(() => clusteredProportion([], level)).toThrow(RangeError);
      expect(() => clusteredProportion(control, level)).toThrow(RangeError);
    }
    expect(() => clusteredProportion([{ events: 3, units: 2 }], 0.95)).toThrow(RangeError);
    expect(() => clusteredProportionOf({ ...clusterSums(control), clusters: 0 }, 0.95)).toThrow(
      RangeError,
    );
  });
});

function paired(events: readonly number[], units: readonly number[]) {
  return events.map((count, at) => ({ events: count, units: units[at] as number }));
}

function drawn(random: () => number, rate: number) {
  const units = 2 + Math.floor(random() * 9);
  let events = 0;
  for (let unit = 0; unit < units; unit += 1) if (random() < rate) events += 1;
  return { events, units };
}

function holds(interval: { lower: number; upper: number } | undefined, truth: number): boolean {
  return interval !== undefined && interval.lower <= truth && truth <= interval.upper;
}
