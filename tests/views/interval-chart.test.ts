import { expect, test } from "vitest";
import { acrossFinding, referencesOf } from "@/lib/views/across-finding";
import { intervalChart } from "@/lib/views/interval-chart";
import { clinician, medianFigure, rateFigure } from "./made-figure";
import { measured } from "./measured";

// Expected words and places: computed by hand from the figures given.

const parts = [
  medianFigure({ subject: clinician("C10"), median: 12, bounds: [11, 13] }),
  medianFigure({ subject: clinician("C2"), median: 30, bounds: [28, 33] }),
  medianFigure({ subject: clinician("C01"), median: 18, bounds: [17, 19] }),
];
const whole = medianFigure({ n: 1000 });

test("rows stand in the order of their codes, whatever their values", () => {
  const chart = intervalChart({
    measure: measured("volume"),
    figures: parts,
    references: [],
    title: "",
  });
  expect(chart.rows.map((row) => row.label)).toEqual(["C01, P1", "C2, P1", "C10, P1"]);
  expect(chart.table.rows.map((row) => row.cells[0])).toEqual(["C01, P1", "C2, P1", "C10, P1"]);
});

test("a row without an estimate is not 0 and says why", () => {
  const none = medianFigure({
    subject: clinician("C03"),
    n: 0,
    median: null,
    quartiles: null,
    bounds: null,
    population: 3,
    notRecorded: 3,
  });
  const [row] = intervalChart({
    measure: measured("volume"),
    figures: [none],
    references: [],
    title: "",
  }).rows;
  expect(row).toMatchObject({
    estimate: null,
    lower: null,
    upper: null,
    missing: "Nothing recorded for the units of this period.",
    counts: "0",
  });
});

test("the axis holds the intervals and the lines to compare with", () => {
  const chart = intervalChart({
    measure: measured("volume"),
    figures: parts,
    references: [{ value: 40, words: "" }],
    title: "",
  });
  expect(chart.axis.min).toBeLessThanOrEqual(11);
  expect(chart.axis.max).toBeGreaterThanOrEqual(40);
});

test("the finding says the whole with its interval and names nobody", () => {
  const finding = acrossFinding(measured("volume"), whole, parts);
  expect(finding).toBe(
    "Irrigant volume per canal: half of 1\u202f000 canals had 18.6 mL or more (95 % interval 17.0 mL to 20.0 mL); the 3 shown lie between 12.0 mL and 30.0 mL",
  );
  for (const part of parts)
    expect(finding).not.toContain(part.about.kind === "clinician" ? part.about.code : "");
});

test("none seen is called none, with how high it may still be", () => {
  // Clopper–Pearson 0/300, upper end 1.222 % (computed with SciPy 1.17.1, binomtest(0, 300).proportion_ci(method='exact')).
  const none = rateFigure({ numerator: 0, denominator: 300 });
  const some = rateFigure({ numerator: 3, denominator: 100, subject: clinician("C01") });
  const others = rateFigure({ numerator: 0, denominator: 200, subject: clinician("C02") });
  expect(acrossFinding(measured("separation-per-use"), none, [some, others])).toBe(
    "Instrument separation per use: none in 300 uses, up to 1.22 % may still be; the 2 shown lie between none and 3.00 %",
  );
});

test("a criterion is seen against the pooled rate and its target", () => {
  const figure = rateFigure({
    measure: "criterion/timer-reset",
    numerator: 90,
    denominator: 100,
    notMet: 10,
  });
  expect(referencesOf(figure).map((line) => line.words)).toEqual([
    "all practices 90.0 %",
    "target 95 %",
  ]);
  expect(referencesOf(rateFigure({ numerator: 0, denominator: 0 }))).toEqual([]);
});
