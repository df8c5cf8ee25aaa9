import { expect, test } from "vitest";
import { clusteredWords } from "@/lib/views/clustered-words";
import { rateOf } from "./made-comparison";
import { medianFigure, rateFigure } from "./made-figure";

// Intervals of rates: computed (Rao & Scott 1992 with t(K−1) written out in Python, SciPy's t.ppf); ends of medians are given.

test("an interval that is wider is the one to read, and how much wider is said", () => {
  // 3 of 30 patients with both of two uses: design effect 2.069, 3.26 % to 26.8 %, 1.522 times Wilson's width.
  const alike = rateOf([
    [3, 2, 2],
    [27, 0, 2],
  ]);
  expect(clusteredWords(alike)).toBe(
    "Read 3.26 % to 26.8 %, which allows for uses of one patient resembling each other; it is 1.5 times as wide as the plain one by Wilson.",
  );
  const clustered = { lower: 16, upper: 22, designEffect: 3, clusters: 9 };
  expect(clusteredWords(medianFigure({ clustered }))).toBe(
    "Read 16.0 mL to 22.0 mL, which allows for canals of one patient resembling each other; it is 2.0 times as wide as the plain one.",
  );
});

test("one that is hardly wider, or no wider, is not called wider", () => {
  // 2 of 100 patients with one of two uses: 0.271 % to 3.62 %, 1.016 times Wilson's width.
  const apart = rateOf([
    [2, 1, 2],
    [98, 0, 2],
  ]);
  expect(clusteredWords(apart)).toBe(
    "Read 0.27 % to 3.62 %, which allows for uses of one patient resembling each other; it is hardly wider than the plain one by Wilson.",
  );
  const narrower = { lower: 17.5, upper: 19.5, designEffect: 0.6, clusters: 9 };
  expect(clusteredWords(medianFigure({ clustered: narrower }))).toMatch(
    /; here it is no wider than the plain one\.$/,
  );
  const noPlain = medianFigure({ bounds: null, clustered: narrower });
  expect(clusteredWords(noPlain)).toMatch(/resembling each other\.$/);
});

test("with none or all of them events patients are the units, and their number is not said", () => {
  // 0 of 30 patients: 1 − .025^(1/30) = 11.57 % (Clopper & Pearson 1934, the closed form at 0).
  expect(clusteredWords(rateOf([[30, 0, 2]]))).toBe(
    "Read 0 % to 11.6 %, in which patients are the units: with none seen nothing shows how alike uses of one patient are.",
  );
  const measure = "criterion/length-recorded";
  expect(clusteredWords(rateOf([[30, 2, 2]], { measure }))).toBe(
    "Read 88.4 % to 100 %, in which patients are the units: with all met nothing shows how alike canals of one patient are.",
  );
});

test("without one it says why", () => {
  expect(clusteredWords(rateOf([[1, 1, 40]]))).toBe(
    "Too few patients to allow for uses of one patient resembling each other: the plain interval leaves that out and may well be too narrow.",
  );
  expect(clusteredWords(rateFigure({ measure: "criterion/line-rinse" }))).toBe(
    "Chair-days sit in no patient; the plain interval is the one to read.",
  );
  expect(clusteredWords(rateFigure({ measure: "separation-per-instrument" }))).toBe(
    "Instruments sit in no patient; the plain interval is the one to read.",
  );
  const nothing = rateFigure({ numerator: 0, denominator: 0, notMet: 0 });
  expect(clusteredWords(nothing)).toBe("");
});
