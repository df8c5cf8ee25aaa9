import { expect, test } from "vitest";
import { differenceOf } from "@/lib/audit/difference";
import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { medianDifference } from "@/lib/statistics/median-difference";
import { quantile } from "@/lib/statistics/quantile";
import { medianFigure, rateFigure } from "../views/made-figure";
import { alike, countsOf } from "./made-clusters";

// Expected values: published where a source stands beside them, else computed by lib/statistics on lists written here.

const plain = (numerator: number, denominator: number) => rateFigure({ numerator, denominator });

test("the difference of rates is Newcombe's method 10, with Wilson's limits", () => {
  // Newcombe 1998, Stat Med 17:873, table II: 56/70 v 48/80 .0524 to .3339; 0/10 v 0/20 −.1611 to .2775.
  const found = differenceOf(plain(56, 70), plain(48, 80));
  expect(found?.estimate).toBeCloseTo(0.2, 12);
  expect(found?.lower).toBeCloseTo(0.0524, 4);
  expect(found?.upper).toBeCloseTo(0.3339, 4);
  expect(found).toMatchObject({ settled: true, method: "newcombe", level: 0.95 });
  const none = differenceOf(plain(0, 10), plain(0, 20));
  expect(none?.lower).toBeCloseTo(-0.1611, 4);
  expect(none?.upper).toBeCloseTo(0.2775, 4);
  expect(none?.settled).toBe(false);
});

test("the limits that allow for patients take their place, and settle less", () => {
  const first = [...alike(14, 4, 4), ...alike(4, 0, 4)];
  const second = [...alike(12, 4, 4), ...alike(8, 0, 4)];
  const [one, other] = [rateFigure(countsOf(first)), rateFigure(countsOf(second))];
  const independent = differenceOf({ ...one, clustered: null }, { ...other, clustered: null });
  const found = differenceOf(one, other);
  if (!one.clustered || !other.clustered || !found) throw new Error("no interval");
  const estimate = 56 / 72 - 48 / 80;
  expect(found.estimate).toBeCloseTo(estimate, 12);
  // By the definition: squares of the distances to the own ends, added.
  expect(found.lower).toBeCloseTo(
    estimate - Math.hypot(56 / 72 - one.clustered.lower, other.clustered.upper - 48 / 80),
    12,
  );
  expect([independent?.settled, found.settled]).toEqual([true, false]);
});

test("the difference of medians adds Woodruff's ends", () => {
  const patients = (shift: number) =>
    Array.from({ length: 20 }, (_, patient) =>
      [0, 1, 2].map((canal) => shift + ((patient * 7 + canal * 3) % 11)),
    );
  const figure = (of: number[][]) => {
    const ends = clusteredMedianInterval(of, 0.95);
    return medianFigure({
      n: 60,
      median: quantile(of.flat(), 0.5) ?? null,
      clustered: ends ? { ...ends, clusters: 20 } : null,
    });
  };
  const found = differenceOf(figure(patients(4)), figure(patients(0)));
  const expected = medianDifference(patients(0), patients(4), 0.95);
  expect(found?.estimate).toBe(expected?.estimate);
  expect(found?.lower).toBeCloseTo(expected?.interval?.lower ?? Number.NaN, 12);
  expect(found?.upper).toBeCloseTo(expected?.interval?.upper ?? Number.NaN, 12);
  expect(found?.method).toBe("median-difference");
});

test("there is none without an estimate, nor of a median without ends that allow for patients", () => {
  expect(differenceOf(plain(0, 0), plain(1, 20))).toBeUndefined();
  expect(differenceOf(plain(1, 20), plain(0, 0))).toBeUndefined();
  const clustered = { lower: 15, upper: 21, designEffect: 1, clusters: 9 };
  expect(differenceOf(medianFigure({}), medianFigure({ clustered }))).toBeUndefined();
  expect(differenceOf(medianFigure({ clustered }), medianFigure({ clustered }))?.settled).toBe(
    false,
  );
});
