import { expect, test } from "vitest";
import { countWords, estimateWords, figureLine, valueWords } from "@/lib/views/figure-line";
import { clinician, medianFigure, rateFigure } from "./made-figure";

test("a line never has an estimate without its interval and its counts", () => {
  // Clopper–Pearson 26/1403: 1.214 to 2.704 % (Di Fiore 2006, Int Endod J 39:700, counts; limits computed with SciPy 1.17.1, binomtest(26, 1403).proportion_ci(method='exact')).
  const figure = rateFigure({
    measure: "separation-per-visit",
    numerator: 26,
    denominator: 1403,
    population: 1403,
  });
  expect(figureLine(figure)).toBe(
    "Instrument separation per visit, all practices, 2026-Q3: 1.85 %, 95 % interval 1.21 % to 2.70 % (Clopper–Pearson, exact) (26 of 1\u202f403; 1\u202f403 in all; not recorded: 0)",
  );
});

test("none seen is not a rate of 0: it says how high the rate may still be", () => {
  // Clopper–Pearson 0/60: 0 to 5.963 % (computed with SciPy 1.17.1, binomtest(0, 60).proportion_ci(method='exact')).
  const figure = rateFigure({ numerator: 0, denominator: 60, population: 60 });
  expect(estimateWords(figure)).toBe(
    "none; up to 5.96 % may still be (95 % interval, Clopper–Pearson, exact)",
  );
});

test("none met of a criterion is a rate of 0", () => {
  // Wilson 0/60: 0 to 6.017 % (computed with SciPy 1.17.1, binomtest(0, 60).proportion_ci(method='wilson')).
  const figure = rateFigure({
    measure: "criterion/length-recorded",
    numerator: 0,
    denominator: 60,
    notMet: 60,
  });
  expect(estimateWords(figure)).toBe("0 %, 95 % interval 0 % to 6.02 % (Wilson)");
});

test("nothing to estimate says why and is never 0", () => {
  expect(
    estimateWords(
      medianFigure({ n: 0, median: null, quartiles: null, bounds: null, population: 0 }),
    ),
  ).toBe("No units in this period.");
  const unrecorded = medianFigure({
    n: 0,
    median: null,
    quartiles: null,
    bounds: null,
    population: 4,
    notRecorded: 4,
  });
  expect(estimateWords(unrecorded)).toBe("Nothing recorded for the units of this period.");
  expect(estimateWords(rateFigure({ numerator: 0, denominator: 0, population: 0 }))).toBe(
    "No units in this period.",
  );
});

test("too few for an interval is said where the interval would stand", () => {
  // n ≤ 5 has no order-statistic interval at 95 % (computed by hand: with n = 5 even the outermost values cover 1 − 2 × ½⁵ = 93.75 %).
  expect(estimateWords(medianFigure({ n: 5, bounds: null, population: 5 }))).toBe(
    "18.6 mL, too few for an interval",
  );
});

test("counts name what is left out, excepted and not recorded", () => {
  const figure = medianFigure({
    population: 1250,
    n: 1200,
    excluded: { abandoned: 30, emergency: 12 },
    notRecorded: 8,
  });
  expect(countWords(figure)).toBe(
    "1\u202f200 recorded of 1\u202f250; left out: 30 abandoned, 12 emergency treatment; not recorded: 8",
  );
  const criterion = rateFigure({ measure: "criterion/isolation", excepted: { "not-possible": 3 } });
  expect(countWords(criterion)).toContain("excepted: 3 not possible");
});

test("a value takes the figure's own unit", () => {
  expect(valueWords(medianFigure({ measure: "irrigation-time" }), 289)).toBe("4 min 49 s");
  expect(valueWords(medianFigure({}), 0)).toBe("0.0 mL");
  expect(valueWords(rateFigure({}), 0.9999)).toBe("over 99.9 %");
});

test("whose it is stands in the line", () => {
  expect(figureLine(medianFigure({ subject: clinician("C01") }))).toContain("clinician C01 of P1");
});
