import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clusteredProportion } from "@/lib/statistics/clustered-proportion";
import { allOrNone, type CompositeUnit, opportunityScore } from "@/lib/statistics/composite";
import { wilson } from "@/lib/statistics/proportion-interval";
import { seededRandom } from "@/lib/statistics/seeded-random";

const yes = (criterion: string) => ({ criterion, met: true });
const no = (criterion: string) => ({ criterion, met: false });

// Visits: 2 of 2 opportunities (one of them with three canals), 1 of 2 (one canal of two misses), none eligible, 0 of 1,
// 3 of 3.
const visits = [
  [yes("dam"), yes("length"), yes("length"), yes("length")],
  [yes("dam"), yes("length"), no("length")],
  [],
  [no("dam")],
  [yes("dam"), yes("length"), yes("seal")],
];

describe("The opportunity score", () => {
  test("counts a criterion once a visit, met when all its units are (Nolan & Berwick 2006).", () => {
    const found = opportunityScore(visits, 0.95);
    expect(found).toMatchObject({ met: 6, of: 8, estimate: 0.75 });
    expect(found?.interval?.method).toBe("clustered-wilson");
    const clusters = [
      [2, 2],
      [1, 2],
      [0, 1],
      [3, 3],
    ] as const;
    expect(found?.interval).toEqual(
      clusteredProportion(
        clusters.map(([events, units]) => ({ events, units })),
        0.95,
      )?.interval,
    );
  });

  test("is not eased by a later canal that is sound, nor weighed by many.", () => {
    for (const units of [
      [no("length"), yes("length")],
      [yes("length"), no("length")],
    ]) {
      expect(opportunityScore([units], 0.95)).toMatchObject({ met: 0, of: 1 });
    }
    const many = Array.from({ length: 9 }, () => yes("length"));
    expect(opportunityScore([many, [no("length")]], 0.95)).toMatchObject({ met: 1, of: 2 });
  });

  test("has no interval from one visit, and is nothing without eligible units.", () => {
    expect(opportunityScore([[yes("dam"), no("seal")]], 0.95)).toEqual({
      met: 1,
      of: 2,
      estimate: 0.5,
      interval: undefined,
    });
    expect(opportunityScore([], 0.95)).toBeUndefined();
    expect(opportunityScore([[], []], 0.95)).toBeUndefined();
  });
});

describe("All or none", () => {
  test("counts visits at which nothing was missed, among those with anything eligible.", () => {
    const found = allOrNone(visits, 0.95);
    expect(found).toMatchObject({ met: 2, of: 4, estimate: 0.5 });
    expect(found?.interval).toEqual(wilson(2, 4, 0.95));
    expect(allOrNone([[], [yes("dam")], [no("dam")]], 0.95)).toMatchObject({ met: 1, of: 2 });
    expect(allOrNone([], 0.95)).toBeUndefined();
    expect(allOrNone([[], []], 0.95)).toBeUndefined();
  });

  test("of five independent criteria met at 90 % each is .9⁵ of the visits, though the score is .9.", () => {
    // Computed: .9⁵ = .59049, the arithmetic by which all-or-none is stricter than its items.
    const random = seededRandom(48);
    let [score, whole] = [0, 0];
    for (let year = 0; year < 300; year += 1) {
      const made = simulated(random, 60, () => 0.9);
      const [one, other] = [opportunityScore(made, 0.95), allOrNone(made, 0.95)];
      if (holds(one, 0.9)) score += 1;
      if (holds(other, 0.9 ** 5)) whole += 1;
    }
    expect(score / 300).toBeGreaterThan(0.92);
    expect(whole / 300).toBeGreaterThan(0.92);
    expect(Math.max(score, whole)).toBeLessThan(297);
  });

  test("and the score cover what they say where visits differ.", () => {
    const random = seededRandom(49);
    let score = 0;
    for (let year = 0; year < 300; year += 1) {
      if (
        holds(
          opportunityScore(
            simulated(random, 60, () => (random() < 0.5 ? 0.6 : 1)),
            0.95,
          ),
          0.8,
        )
      )
        score += 1;
    }
    expect(score / 300).toBeGreaterThan(0.92);
    expect(score / 300).toBeLessThan(0.99);
  });
});

describe("Both composites", () => {
  const unit = fc.record({
    criterion: fc.constantFrom("dam", "length", "seal"),
    met: fc.boolean(),
  });
  const list = fc.array(fc.array(unit, { maxLength: 6 }), { maxLength: 12 });

  test("do not depend on order, leave their input, and all-or-none never has more visits than opportunities.", () => {
    fc.assert(
      fc.property(list, (made) => {
        const frozen = Object.freeze(
          made.map((visit) => Object.freeze(visit.map((one) => Object.freeze(one)))),
        );
        const turned = frozen.toReversed().map((visit) => visit.toReversed());
        const [score, whole] = [opportunityScore(frozen, 0.9), allOrNone(frozen, 0.9)];
        expect(opportunityScore(turned, 0.9)).toEqual(score);
        expect(allOrNone(turned, 0.9)).toEqual(whole);
        expect(score === undefined).toBe(whole === undefined);
        if (!score || !whole) return;
        expect(whole.of).toBeLessThanOrEqual(score.of);
        expect(whole.met).toBeLessThanOrEqual(score.met);
        expect(score.met === score.of).toBe(whole.met === whole.of);
      }),
      { seed: 50 },
    );
  });

  test("refuse a level that cannot be.", () => {
    for (const level of [0, 1, Number.NaN]) {
      expect(() => opportunityScore(visits, level)).toThrow(RangeError);
      expect(() => allOrNone(visits, level)).toThrow(RangeError);
    }
  });
});

function simulated(random: () => number, count: number, rate: () => number): CompositeUnit[][] {
  return Array.from({ length: count }, () => {
    const own = rate();
    return ["dam", "length", "seal", "shape", "wash"].map((criterion) => ({
      criterion,
      met: random() < own,
    }));
  });
}

function holds(
  found: { interval: { lower: number; upper: number } | undefined } | undefined,
  truth: number,
): boolean {
  return (
    found?.interval !== undefined && found.interval.lower <= truth && truth <= found.interval.upper
  );
}
