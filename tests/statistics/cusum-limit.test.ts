import { describe, expect, test } from "vitest";
import { bernoulliCusum } from "@/lib/statistics/bernoulli-cusum";
import { type CusumCanal, cusumCycles } from "@/lib/statistics/cusum-cycles";
import { cusumLimit } from "@/lib/statistics/cusum-limit";
import { cusumWeight } from "@/lib/statistics/cusum-weight";
import { seededRandom } from "@/lib/statistics/seeded-random";

/** Visits of one to four canals, some of them three times as prone as others. */
function invented(rate: number, visits: number, seed: number): CusumCanal[][] {
  const random = seededRandom(seed);
  return Array.from({ length: visits }, () => {
    const prone = random() < 0.25 ? 2 * rate : (2 / 3) * rate;
    return Array.from({ length: 1 + Math.floor(random() * 4) }, () => ({
      outcome: random() < prone ? (1 as const) : (0 as const),
      baseline: rate,
    }));
  });
}

const canal = (outcome: 0 | 1, baseline: number): CusumCanal => ({ outcome, baseline });

describe("The cycles of a CUSUM", () => {
  test("are those of the one visit there is, followed by hand.", () => {
    // Computed: an event, a step down, an event, a fall to 0.
    const visit = [canal(1, 0.1), canal(0, 0.3), canal(1, 0.2), ...Array(12).fill(canal(0, 0.3))];
    const first = cusumWeight(1, 0.1, 2);
    const second = first + cusumWeight(0, 0.3, 2) + cusumWeight(1, 0.2, 2);
    expect(cusumCycles([visit], 2, 1, 16, 9)).toEqual({
      simulated: 30,
      cycle: [0, 0, 15, 15],
      height: [first, second, first, second].map(Math.fround),
      after: [14, 12, 14, 12],
    });
    expect(cusumCycles([visit], 2, 1, 2, 0.999 * second)).toEqual({
      simulated: 3,
      cycle: [0, 0],
      height: [first, second].map(Math.fround),
      after: [2, 0],
    });
  });

  test("go on while anything is left, however little, until the cap.", () => {
    // Computed: each visit leaves .005 more, so the third event passes .605.
    const event = cusumWeight(1, 0.1, 2);
    const visit = [canal(1, 0.1), canal(0, Math.exp(event - 0.005) - 1)];
    const found = cusumCycles([visit], 2, 1, 2, 0.605);
    expect(found).toMatchObject({ simulated: 5, cycle: [0, 0, 0], after: [4, 2, 0] });
    expect(found.height[2]).toBeCloseTo(event + 0.01, 6);
  });

  test("keep new heights only, rising within a cycle.", () => {
    const visit = [canal(1, 0.1), canal(0, 0.9), canal(1, 0.5), ...Array(9).fill(canal(0, 0.3))];
    expect(cusumCycles([visit], 2, 1, 1, 9).after).toEqual([11]);
  });

  test("take a visit without events as one fall.", () => {
    const visits = [[canal(1, 0.1)], [canal(0, 0.02), canal(0, 0.02), canal(0, 0.02)]];
    const found = cusumCycles(visits, 2, 3, 3_000, 2);
    const outcomes: (0 | 1)[] = [];
    const baselines: number[] = [];
    const random = seededRandom(3);
    while (outcomes.length < found.simulated) {
      for (const one of visits[Math.floor(random() * visits.length)] ?? []) {
        outcomes.push(one.outcome);
        baselines.push(one.baseline);
      }
    }
    const { signals } = bernoulliCusum(outcomes, baselines, 2, 2);
    expect(found.height.filter((height) => height >= 2)).toHaveLength(signals.length);
    expect(signals.length).toBeGreaterThan(100);
  });
});

describe("The limit of a CUSUM", () => {
  const visits = invented(0.03, 1_500, 31);

  test("has the average run wanted in a stream of its own, within four standard errors.", () => {
    const found = cusumLimit({ visits, oddsRatio: 2, averageRun: 2_000, seed: 32 });
    if (found === undefined) throw new Error("a limit was expected");
    const random = seededRandom(33);
    const outcomes: (0 | 1)[] = [];
    while (outcomes.length < 1_000_000) {
      for (const one of visits[Math.floor(random() * visits.length)] ?? []) {
        outcomes.push(one.outcome);
      }
    }
    const { signals } = bernoulliCusum(outcomes, 0.03, 2, found.limit);
    const average = outcomes.length / signals.length;
    const error = Math.hypot(found.standardError, average / Math.sqrt(signals.length));
    expect(Math.abs(average - found.averageRun)).toBeLessThan(4 * error);
    expect(found.averageRun).toBeGreaterThanOrEqual(2_000);
    expect(found.averageRun).toBeLessThan(2_050);
    expect(found.standardError).toBe(found.averageRun / Math.sqrt(found.signals));
    expect(found.signals).toBeGreaterThan(300);
  });

  test("keeps the likeness of a visit's canals: single canals get a lower limit.", () => {
    // Each visit all events or none: the same rate, and runs of events.
    const alike = Array.from({ length: 400 }, (_, i) =>
      Array<CusumCanal>(4).fill(canal(i % 20 === 0 ? 1 : 0, 0.05)),
    );
    const asked = { oddsRatio: 2, averageRun: 1_000, seed: 34 };
    const whole = cusumLimit({ ...asked, visits: alike })?.limit ?? Number.NaN;
    const single = cusumLimit({ ...asked, visits: alike.flat().map((one) => [one]) });
    expect(whole).toBeGreaterThan((single?.limit ?? Number.NaN) + 0.5);
  });

  test("rises with the average run wanted, and is the same for the same request.", () => {
    const limits = [300, 1_000, 3_000].map(
      (averageRun) =>
        cusumLimit({ visits, oddsRatio: 2, averageRun, seed: 35 })?.limit ?? Number.NaN,
    );
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    expect(new Set(limits).size).toBe(3);
    const frozen = Object.freeze(visits.map((visit) => Object.freeze(visit)));
    const request = { visits: frozen, oddsRatio: 2, averageRun: 1_000, seed: 35 };
    expect(cusumLimit(request)?.limit).toBe(limits[1]);
  });

  test("is found where the visits are far worse than their baseline, too.", () => {
    const worse = visits.map((visit) => visit.map((one) => ({ ...one, baseline: 0.01 })));
    const found = cusumLimit({ visits: worse, oddsRatio: 2, averageRun: 500, seed: 36 });
    expect(found?.averageRun).toBeGreaterThanOrEqual(500);
    expect(found?.averageRun).toBeLessThan(520);
    expect(found?.signals).toBeGreaterThan(200);
  });

  test("lies halfway to the first height where events are rarer than the run wanted.", () => {
    const rare = [[canal(1, 0.1)], ...Array(99).fill([canal(0, 0.1)])];
    const found = cusumLimit({ visits: rare, oddsRatio: 2, averageRun: 20, seed: 37 });
    expect(found?.limit).toBe(Math.fround(cusumWeight(1, 0.1, 2)) / 2);
    expect(found?.averageRun).toBeGreaterThan(50);
  });

  test("does not exist without an event, or in a simulation too short to tell.", () => {
    const none = visits.map((visit) => visit.map((one) => canal(0, one.baseline)));
    const asked = { oddsRatio: 2, averageRun: 500, seed: 38 };
    expect(cusumLimit({ ...asked, visits: none })).toBeUndefined();
    expect(cusumLimit({ ...asked, visits: [] })).toBeUndefined();
    const once = [[canal(1, 0.01)], ...Array(999_999).fill([canal(0, 0.01)])];
    expect(cusumLimit({ ...asked, visits: once, canals: 500 })).toBeUndefined();
  });

  test("is the number that it was when it was checked against streams of their own.", () => {
    // Computed with this function itself, so that a change of any constant shows.
    const found = cusumLimit({ visits, oddsRatio: 2, averageRun: 1_000, seed: 39 });
    expect(found).toEqual({
      limit: 2.6683568954467773,
      averageRun: 1001.3758389261745,
      standardError: 47.363451932239734,
      signals: 447,
      simulated: 500_023,
    });
  });

  test("refuses what cannot be.", () => {
    const asked = { visits, oddsRatio: 2, averageRun: 500, seed: 38 };
    for (const wrong of [
      { visits: [[], ...visits] },
      { oddsRatio: 1 },
      { averageRun: 0.5 },
      { averageRun: Number.NaN },
      { canals: 499 },
      { canals: Number.POSITIVE_INFINITY },
      { seed: 0 },
    ]) {
      expect(() => cusumLimit({ ...asked, ...wrong })).toThrow(RangeError);
    }
    // An average run of 1 is met by the lowest limit there is.
    expect(cusumLimit({ ...asked, averageRun: 1 })?.averageRun).toBeGreaterThan(1);
  });
});
