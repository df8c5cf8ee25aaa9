import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ClusterSums, clusterSums, clusterVariance } from "@/lib/statistics/cluster-sums";

// Weil 1970, from memory; the design effects that Rao & Scott 1992 print for these litters confirm them
// (see clustered-proportion.test.ts).
const control = {
  events: [13, 12, 9, 9, 8, 8, 12, 11, 9, 9, 8, 11, 4, 5, 7, 7],
  units: [13, 12, 9, 9, 8, 8, 13, 12, 10, 10, 9, 13, 5, 7, 10, 10],
};
const litters = control.events.map((events, at) => ({
  events,
  units: control.units[at] as number,
}));

const cluster = fc
  .integer({ min: 0, max: 40 })
  .chain((units) =>
    fc.record({ events: fc.integer({ min: 0, max: units }), units: fc.constant(units) }),
  );

describe("Sums over clusters", () => {
  test("of the control litters agree with R.", () => {
    // Computed with R 4.2.2: c(length(x), sum(x), sum(n), sum(x^2), sum(x * n), sum(n^2)).
    expect(clusterSums(litters)).toEqual({
      clusters: 16,
      events: 142,
      units: 158,
      eventsSquared: 1354,
      eventsByUnits: 1481,
      unitsSquared: 1640,
    });
  });

  test("are all 0 without clusters, and do not count one without units.", () => {
    const none = clusterSums([]);
    expect(Object.values(none)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(clusterSums([{ events: 0, units: 0 }])).toEqual(none);
    expect(clusterSums([...litters, { events: 0, units: 0 }])).toEqual(clusterSums(litters));
    expect(clusterVariance(none)).toBeUndefined();
  });

  test("add up from any two parts, in any order, and leave their input.", () => {
    fc.assert(
      fc.property(fc.array(cluster), fc.array(cluster), (one, other) => {
        const [a, b] = [clusterSums(one), clusterSums(other)];
        const both = Object.freeze([...one, ...other].map((each) => Object.freeze(each)));
        const added = Object.entries(a).map(([name, sum]) => [
          name,
          sum + b[name as keyof ClusterSums],
        ]);
        expect(clusterSums(both)).toEqual(Object.fromEntries(added));
        expect(clusterSums(both.toReversed())).toEqual(clusterSums(both));
      }),
      { seed: 31 },
    );
  });

  test("refuse counts that cannot be.", () => {
    for (const [events, units] of [
      [3, 2],
      [-1, 2],
      [0.5, 2],
      [1, 2.5],
      [Number.NaN, 2],
    ] as const) {
      expect(() => clusterSums([{ events, units }])).toThrow(RangeError);
    }
  });
});

describe("The variance of a clustered proportion", () => {
  test("agrees with R, and with the survey package, for the control litters.", () => {
    // Computed with R 4.2.2: K / (K - 1) * sum((x - p * n)^2) / sum(n)^2.
    expect(clusterVariance(clusterSums(litters))).toBeCloseTo(0.000709941185145845, 15);
  });

  test("exists from two clusters on.", () => {
    expect(clusterVariance(clusterSums([{ events: 2, units: 5 }]))).toBeUndefined();
    // Computed by hand: p = ½, 2/1·((2 − 2)² + (1 − 1)²) and 2/1·(1² + 1²)/4².
    expect(
      clusterVariance(
        clusterSums([
          { events: 2, units: 4 },
          { events: 1, units: 2 },
        ]),
      ),
    ).toBe(0);
    expect(
      clusterVariance(
        clusterSums([
          { events: 2, units: 2 },
          { events: 0, units: 2 },
        ]),
      ),
    ).toBe(0.25);
  });

  test("is that of the sum written out, and exactly 0 where every rate is the same.", () => {
    fc.assert(
      fc.property(fc.array(cluster, { minLength: 2 }), (clusters) => {
        const counted = clusters.filter(({ units }) => units > 0);
        fc.pre(counted.length > 1);
        const { events, units } = clusterSums(counted);
        const squares = counted.reduce(
          (all, one) => all + (one.events - (events / units) * one.units) ** 2,
          0,
        );
        const expected = ((counted.length / (counted.length - 1)) * squares) / units ** 2;
        expect(Math.abs((clusterVariance(clusterSums(clusters)) ?? -1) - expected)).toBeLessThan(
          1e-12,
        );
        const alike = counted.map((one) => ({ events: one.units, units: 3 * one.units }));
        expect(clusterVariance(clusterSums(alike))).toBe(0);
      }),
      { seed: 32 },
    );
  });

  test("refuses sums that no clusters have.", () => {
    const sums = clusterSums(litters);
    for (const wrong of [
      { clusters: 0 },
      { clusters: 159 },
      { clusters: 15.5 },
      { events: 159 },
      { events: -1 },
      { eventsSquared: 141 },
      { eventsSquared: 1482 },
      { eventsByUnits: 1353 },
      { eventsByUnits: 1641 },
      { eventsByUnits: Number.NaN },
      { unitsSquared: 1480 },
      { units: 1641 },
    ]) {
      expect(() => clusterVariance({ ...sums, ...wrong }), JSON.stringify(wrong)).toThrow(
        RangeError,
      );
    }
    const none = clusterSums([]);
    expect(() => clusterVariance({ ...none, clusters: 1 })).toThrow(RangeError);
  });
});
