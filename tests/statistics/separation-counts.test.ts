import { describe, expect, test } from "vitest";
import { clopperPearson, wilson } from "@/lib/statistics/proportion-interval";

// Counts of separated instruments as published; the limits in per cent were computed from them
// with statsmodels proportion_confint(x, n, 0.05, "wilson" | "beta").
const published = [
  {
    source: "Iqbal 2006, J Endod 32:1048, cases",
    x: 12,
    n: 4865,
    per100: "0.247",
    wilson: ["0.141", "0.431"],
    exact: ["0.128", "0.430"],
  },
  {
    source: "Di Fiore 2006, Int Endod J 39:700, teeth",
    x: 26,
    n: 1403,
    per100: "1.853",
    wilson: ["1.268", "2.702"],
    exact: ["1.214", "2.704"],
  },
  {
    source: "Di Fiore 2006, Int Endod J 39:700, canals",
    x: 26,
    n: 3181,
    per100: "0.817",
    wilson: ["0.558", "1.195"],
    exact: ["0.535", "1.195"],
  },
  {
    source: "Plotino 2015, instruments",
    x: 8,
    n: 1696,
    per100: "0.472",
    wilson: ["0.239", "0.928"],
    exact: ["0.204", "0.927"],
  },
  {
    source: "Plotino 2015, canals",
    x: 8,
    n: 3780,
    per100: "0.212",
    wilson: ["0.107", "0.417"],
    exact: ["0.091", "0.417"],
  },
  {
    source: "Restor Dent Endod 2023;48:e38, teeth",
    x: 79,
    n: 2168,
    per100: "3.644",
    wilson: ["2.934", "4.518"],
    exact: ["2.895", "4.521"],
  },
  {
    source: "no publication, computed: none of sixty",
    x: 0,
    n: 60,
    per100: "0.000",
    wilson: ["0.000", "6.017"],
    exact: ["0.000", "5.963"],
  },
];

describe("Published separation counts have their limits to three decimals of a per cent", () => {
  for (const row of published) {
    test(`for ${row.x} of ${row.n} (${row.source}).`, () => {
      expect(percent(row.x / row.n)).toBe(row.per100);
      const score = wilson(row.x, row.n, 0.95);
      const exact = clopperPearson(row.x, row.n, 0.95);
      expect([percent(score?.lower), percent(score?.upper)]).toEqual(row.wilson);
      expect([percent(exact?.lower), percent(exact?.upper)]).toEqual(row.exact);
    });
  }
});

function percent(share: number | undefined): string {
  return (100 * (share ?? Number.NaN)).toFixed(3);
}
