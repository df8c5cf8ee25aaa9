import { expect, test } from "vitest";
import { funnelOf } from "@/lib/audit/funnel";
import { shrunkenOf } from "@/lib/audit/shrunken";
import { funnelLimits } from "@/lib/statistics/funnel";
import { betaBinomialFit } from "@/lib/statistics/shrinkage";
import { clinician, rateFigure } from "../views/made-figure";

// Expected values: published or computed where that stands beside them, else worked by hand.

const one = (code: string, numerator: number, denominator: number) =>
  rateFigure({ subject: clinician(code), numerator, denominator });
const pooled = (rate: number, designEffect = 1) => ({ events: 0, units: 1, rate, designEffect });

test("the funnel has the interpolated exact limits out to the largest number of units, unclipped", () => {
  const { limits } = funnelOf([one("A", 2, 100), one("B", 1, 40)], pooled(0.02));
  expect(limits.map(({ units }) => units)).toEqual(Array.from({ length: 100 }, (_, at) => at + 1));
  // θ = .02, n = 100: −.0099, −.0081, .0473, .0698 (computed from the binomial, to four decimals).
  const last = limits.at(-1);
  expect(last?.lower998).toBeCloseTo(-0.0099, 4);
  expect(last?.lower95).toBeCloseTo(-0.0081, 4);
  expect(last?.upper95).toBeCloseTo(0.0473, 4);
  expect(last?.upper998).toBeCloseTo(0.0698, 4);
});

test("long funnels are drawn in a hundred steps that end at the largest", () => {
  const { limits } = funnelOf([one("A", 2, 1234)], pooled(0.02));
  expect(limits.length).toBeLessThanOrEqual(100);
  expect([limits[0]?.units, limits.at(-1)?.units]).toEqual([13, 1234]);
});

test("the limits count as many units as the design effect leaves", () => {
  const { limits } = funnelOf([one("A", 2, 90)], pooled(0.1, 3));
  expect(limits.at(-1)?.upper95).toBe(funnelLimits(0.1, 30, 0.975));
});

test("no limits are drawn around none or all, nor without units", () => {
  expect(funnelOf([one("A", 0, 50)], pooled(0)).limits).toEqual([]);
  expect(funnelOf([one("A", 50, 50)], pooled(1)).limits).toEqual([]);
  expect(funnelOf([], pooled(0.5))).toEqual({ limits: [], overdispersion: null });
});

test("overdispersion is mean z² around the pooled rate", () => {
  // By hand: 4 and 16 of 100, pooled .1; z² = 36/9 each, so φ = 4.
  const found = funnelOf([one("A", 4, 100), one("B", 16, 100)], pooled(0.1)).overdispersion;
  expect(found?.phi).toBeCloseTo(4, 12);
  // w = 100/.09; τ² = (2·4 − 2 + 1)/(2w − w) = 7/w.
  expect(found?.tau2).toBeCloseTo(7 * (0.09 / 100), 12);
});

test("rates are shrunken to that of all by as much as their reliability leaves", () => {
  const figures = [one("A", 2, 100), one("B", 30, 100), one("C", 4, 20), one("N", 0, 0)];
  const found = shrunkenOf(figures);
  const fit = betaBinomialFit([
    { events: 2, units: 100 },
    { events: 30, units: 100 },
    { events: 4, units: 20 },
  ]);
  if (!found || !fit) throw new Error("nothing fitted");
  expect(found.extra).toBe(true);
  expect(found.rates.map(({ figure }) => figure)).toEqual(figures.slice(0, 3));
  for (const { figure, rate, reliability } of found.rates) {
    // By definition: reliability × own + (1 − reliability) × everyone's, reliability n/(n + 1/θ).
    expect(reliability).toBeCloseTo(figure.denominator / (figure.denominator + 1 / fit.theta), 12);
    expect(rate).toBeCloseTo(reliability * (figure.estimate ?? 0) + (1 - reliability) * fit.mu, 12);
  }
});

test("without extra variation all are everyone's rate, and one clinician alone is not shrunken", () => {
  const found = shrunkenOf([one("A", 5, 100), one("B", 5, 100), one("C", 6, 100)]);
  expect(found?.extra).toBe(false);
  for (const { rate, reliability } of found?.rates ?? []) {
    expect(rate).toBeCloseTo(16 / 300, 12);
    expect(reliability).toBe(0);
  }
  expect(shrunkenOf([one("A", 5, 100), one("N", 0, 0)])).toBeUndefined();
});
