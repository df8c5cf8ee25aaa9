import { describe, expect, it } from "vitest";
import { type CanalOf, separationCusum, type VisitsAlike } from "@/lib/audit/separation-cusum";
import { cusumLimit } from "@/lib/statistics/cusum-limit";
import { betaBinomialFit, shrunkenRate } from "@/lib/statistics/shrinkage";

// Expected values: worked by hand from the weights of Steiner 2000, x·ln 2 − ln(1 + p) at odds ratio 2, or computed by
// lib/statistics (held to published values).

const canal = (event: boolean, name = "front//primary"): CanalOf => ({ case: name, event });
const visits = (many: number, ...canals: CanalOf[]): VisitsAlike => ({ canals, visits: many });
const gain = (p: number) => Math.log(2) - Math.log(1 + p);
const loss = (p: number) => Math.log(1 + p);

/** 2 of 100 canals, one a visit. */
const plain = [visits(98, canal(false)), visits(2, canal(true))];

describe("the running sum", () => {
  it("rises with a separation, falls with each canal without, never under 0", () => {
    const outcomes = [false, true, false, false, true];
    const found = separationCusum(
      outcomes.map((event) => canal(event)),
      plain,
      20,
    );
    const first = gain(0.02);
    const third = first - loss(0.02);
    const fourth = third - loss(0.02);
    expect(found?.path.map((sum) => sum.toFixed(12))).toEqual(
      [0, first, third, fourth, fourth + gain(0.02)].map((sum) => sum.toFixed(12)),
    );
    expect(found?.baseline).toEqual({ events: 2, canals: 100 });
    expect(found?.byCase).toBe(false);
  });

  it("signals at the canal whose sum reaches the limit, and begins again", () => {
    const canals = Array.from({ length: 30 }, () => canal(true));
    const found = separationCusum(canals, plain, 20);
    if (!found) throw new Error("no sum");
    const needed = Math.ceil(found.limit / gain(0.02));
    expect(found.signals[0]).toBe(needed - 1);
    expect(found.signals[1]).toBe(2 * needed - 1);
    expect(found.path[needed - 1]).toBeGreaterThanOrEqual(found.limit);
    expect(found.path[needed]).toBeCloseTo(gain(0.02), 12);
  });

  it("has the limit of one false alarm in ten years of the volume, the same for the same request", () => {
    const found = separationCusum([canal(false)], plain, 20);
    const again = separationCusum([canal(true), canal(false)], plain, 20);
    expect(again?.limit).toBe(found?.limit);
    const one = (outcome: 0 | 1) => [{ outcome, baseline: 0.02 }];
    const request = {
      visits: [...new Array(98).fill(one(0)), ...new Array(2).fill(one(1))],
      oddsRatio: 2,
      averageRun: 200,
    };
    // Another seed gives the same within its error.
    const other = cusumLimit({ ...request, seed: 7 });
    expect(found?.averageRun).toBeGreaterThanOrEqual(200);
    expect(Math.abs((found?.limit ?? 0) - (other?.limit ?? 0))).toBeLessThan(gain(0.02) / 2);
    // More canals a year, fewer false alarms a canal: the limit is higher.
    const larger = separationCusum([canal(false)], plain, 80);
    expect(larger?.limit).toBeGreaterThan(found?.limit ?? Number.NaN);
  });
});

describe("what is expected", () => {
  const molar = "molar/severe/primary";
  const byCase = [
    visits(398, canal(false)),
    visits(2, canal(true)),
    visits(340, canal(false, molar)),
    visits(60, canal(true, molar)),
  ];

  it("is by case where the cases differ, drawn towards everyone's rate", () => {
    const found = separationCusum([canal(true), canal(true, molar)], byCase, 20);
    const fit = betaBinomialFit([
      { events: 2, units: 400 },
      { events: 60, units: 400 },
    ]);
    if (!fit || !found) throw new Error("nothing fitted");
    const [front, hard] = [shrunkenRate(2, 400, fit), shrunkenRate(60, 400, fit)];
    expect(found.byCase).toBe(true);
    expect(found.path[0]).toBeCloseTo(gain(front), 12);
    expect((found.path[1] ?? 0) - (found.path[0] ?? 0)).toBeCloseTo(gain(hard), 12);
    expect(hard).toBeGreaterThan(front);
  });

  it("is everyone's rate of the fit for a case that the baseline has not seen", () => {
    const found = separationCusum([canal(true, "premolar//other")], byCase, 20);
    const fit = betaBinomialFit([
      { events: 2, units: 400 },
      { events: 60, units: 400 },
    ]);
    expect(found?.path[0]).toBeCloseTo(gain(fit?.mu ?? Number.NaN), 12);
  });

  it("is one rate for all where the cases do not differ beyond chance", () => {
    const even = [
      visits(390, canal(false)),
      visits(10, canal(true)),
      visits(390, canal(false, molar)),
      visits(10, canal(true, molar)),
    ];
    const found = separationCusum([canal(true, molar)], even, 20);
    expect(found?.byCase).toBe(false);
    expect(found?.path[0]).toBeCloseTo(gain(20 / 800), 12);
  });

  it("counts every canal of visits that are alike", () => {
    const pairs = [visits(48, canal(false), canal(false)), visits(2, canal(false), canal(true))];
    expect(separationCusum([canal(false)], pairs, 20)?.baseline).toEqual({
      events: 2,
      canals: 100,
    });
  });
});

describe("no running sum", () => {
  it("without a separation in the baseline, with nothing else in it, or without canals", () => {
    expect(separationCusum([canal(true)], [visits(100, canal(false))], 20)).toBeUndefined();
    expect(separationCusum([canal(true)], [visits(1, canal(true))], 20)).toBeUndefined();
    expect(separationCusum([canal(true)], [], 20)).toBeUndefined();
    expect(separationCusum([], plain, 20)).toBeUndefined();
  });
});
