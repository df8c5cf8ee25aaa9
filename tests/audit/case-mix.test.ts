import { expect, test } from "vitest";
import { caseMixOf } from "@/lib/audit/case-mix";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { clinician, rateFigure } from "../views/made-figure";

// Expected values: worked by hand; the exact limits published where that stands beside them.

type Counts = readonly [events: number, units: number];
const measure = "separation-per-canal";
const teeth = ["front", "premolar", "molar"];

/** Figures by cell of each clinician, with the group's; and the clinicians' whole. */
function made(of: Readonly<Record<string, readonly Counts[]>>): {
  apart: Figure[];
  whole: RateFigure[];
} {
  const cell = (place: number, [numerator, denominator]: Counts) => ({
    measure,
    numerator,
    denominator,
    stratum: {
      by: "case",
      tooth: teeth[place] ?? null,
      curvature: null,
      treatment: "primary",
    } as const,
  });
  const sum = (some: readonly Counts[]): Counts =>
    some.reduce<Counts>(([x, n], [more, units]) => [x + more, n + units], [0, 0]);
  const codes = Object.keys(of);
  const apart = codes.flatMap((code) =>
    (of[code] ?? []).map((counts, place) =>
      rateFigure({ subject: clinician(code), ...cell(place, counts) }),
    ),
  );
  const group = teeth.map((_, place) =>
    rateFigure(cell(place, sum(codes.map((code) => of[code]?.[place] ?? [0, 0])))),
  );
  const whole = codes.map((code) => {
    const [numerator, denominator] = sum(of[code] ?? []);
    return rateFigure({ subject: clinician(code), measure, numerator, denominator });
  });
  return { apart: [...apart, ...group], whole };
}

const mixOf = (of: Parameters<typeof made>[0]) => {
  const { apart, whole } = made(of);
  return caseMixOf(apart, whole);
};

test("observed and expected have the same sum over all clinicians where no cell is thin", () => {
  const { standardised } = mixOf({
    A: [
      [1, 30],
      [2, 40],
      [9, 80],
    ],
    B: [
      [0, 60],
      [1, 50],
      [2, 10],
    ],
    C: [
      [1, 35],
      [0, 20],
      [4, 45],
    ],
  });
  const sum = (of: (one: (typeof standardised)[number]) => number) =>
    standardised.reduce((all, one) => all + of(one), 0);
  expect(sum((one) => one.observed)).toBe(20);
  expect(sum((one) => one.expected)).toBeCloseTo(20, 12);
  expect(sum((one) => one.share)).toBeCloseTo(1, 12);
  expect(standardised.every(({ leftOut }) => leftOut.units === 0)).toBe(true);
});

test("what is expected of a clinician are everyone's rates at their own cases", () => {
  // Fronts 1 of 100, molars 10 of 100: A with 20 and 80 has .2 + 8 expected, B with 80 and 20 has .8 + 2.
  const { standardised } = mixOf({
    A: [
      [0, 20],
      [0, 0],
      [10, 80],
    ],
    B: [
      [1, 80],
      [0, 0],
      [0, 20],
    ],
  });
  const [a, b] = standardised;
  expect([a?.observed, b?.observed]).toEqual([10, 1]);
  expect(a?.expected).toBeCloseTo(8.2, 12);
  expect(b?.expected).toBeCloseTo(2.8, 12);
  expect(a?.ratio).toBeCloseTo(10 / 8.2, 12);
  // Exact limits of 10 events: 4.7954–18.3904 (Ulm 1990).
  expect((a?.interval?.lower ?? 0) * 8.2).toBeCloseTo(4.7954, 4);
  expect((a?.interval?.upper ?? 0) * 8.2).toBeCloseTo(18.3904, 4);
  expect([a?.share, b?.share]).toEqual([0.5, 0.5]);
});

test("a cell under 20 units, or with nobody else's, is left out of observed and of expected", () => {
  const { standardised, cells } = mixOf({
    A: [
      [1, 30],
      [3, 10],
      [5, 40],
    ],
    B: [
      [2, 30],
      [0, 9],
      [0, 0],
    ],
  });
  const [a, b] = standardised;
  // Fronts alone are left: 3 of 60. Premolars have 19 units; molars are A's alone.
  expect([a?.observed, a?.expected, a?.units]).toEqual([1, 1.5, 30]);
  expect(a?.leftOut).toEqual({ units: 50, events: 8, cells: 2 });
  expect([b?.observed, b?.expected, b?.units]).toEqual([2, 1.5, 30]);
  expect(b?.leftOut).toEqual({ units: 9, events: 0, cells: 1 });
  // Shares are of all units, thin or not: 80 of 119.
  expect(a?.share).toBeCloseTo(80 / 119, 12);
  expect(cells.map((cell) => cell.denominator)).toEqual([60, 40, 19]);
});

test("exactly 20 units are not thin", () => {
  const { standardised } = mixOf({
    A: [[1, 10]],
    B: [[0, 10]],
  });
  expect(standardised[0]?.leftOut.units).toBe(0);
  expect(standardised[0]?.expected).toBe(0.5);
});

test("nothing expected has no ratio, and a clinician without units no row", () => {
  const { standardised } = mixOf({ A: [[0, 30]], B: [[0, 30]], N: [[0, 0]] });
  expect(standardised).toHaveLength(2);
  expect(standardised[0]).toMatchObject({ expected: 0, ratio: null, interval: null });
});
