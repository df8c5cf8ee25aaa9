import { describe, expect, it } from "vitest";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { standardLevels } from "@/lib/audit/flag-levels";
import { flaggedOf } from "@/lib/audit/flagged";
import { pooledOf } from "@/lib/audit/pooled";
import { smallestDetectable } from "@/lib/statistics/detectable";
import { tailProbability } from "@/lib/statistics/tail-probability";
import { clinician, medianFigure, rateFigure } from "../views/made-figure";
import { alike, countsOf } from "./made-clusters";

// Expected values: worked by hand, or computed by lib/statistics (held to published values) on the counts written here.

const perUse = "separation-per-use";
const timer = "criterion/timer-reset";

function one(code: string, numerator: number, denominator: number, measure = perUse): RateFigure {
  const notMet = denominator - numerator;
  return rateFigure({ subject: clinician(code), measure, numerator, denominator, notMet });
}

const nine = Array.from({ length: 9 }, (_, place) => one(`C${place}`, 9, 300));
const page = (figures: readonly Figure[]) => flaggedOf(figures, standardLevels);
const tierOf = (figures: readonly Figure[], code: string) =>
  page(figures).flagged.find(({ figure }) => "code" in figure.about && figure.about.code === code)
    ?.flag.tier;

describe("the flags of a page", () => {
  it("finds a lone clinician with three times the others' rate, first, and nobody else", () => {
    const found = page([...nine, one("X", 27, 300)]);
    expect(found.flagged.map(({ flag }) => flag.tier)).toEqual([
      ...new Array(9).fill(null),
      "look-first",
    ]);
    expect(found.flagged.at(-1)?.flag.direction).toBe("higher");
  });

  it("finds nobody where nobody differs, and has one figure in twenty outside by chance", () => {
    const found = page([...nine, one("X", 9, 300)]);
    expect(found.flagged.every(({ flag }) => flag.tier === null)).toBe(true);
    expect([found.m, found.chance]).toEqual([10, 0.5]);
  });

  it("compares with the pooled rate of all, the person included", () => {
    const figures = [...nine, one("X", 27, 300)];
    // By hand: 9·9 + 27 of 10·300.
    expect(pooledOf(figures, perUse)).toEqual({
      events: 108,
      units: 3000,
      rate: 108 / 3000,
      designEffect: 1,
    });
    const { upper } = tailProbability(27, 300, 0.036);
    const flag = page(figures).flagged.at(-1)?.flag;
    expect(flag?.p).toBeCloseTo(2 * upper, 15);
    // The smallest of ten probabilities is adjusted to ten times itself (Benjamini & Hochberg 1995).
    expect(flag?.adjusted).toBeCloseTo(20 * upper, 14);
  });

  it("flags the better side as well", () => {
    const found = page([...nine, one("X", 0, 900)]);
    expect(found.flagged.at(-1)?.flag).toMatchObject({ tier: "look-first", direction: "lower" });
  });

  it("divides counts by the pooled design effect of the group's figure, and never by less than 1", () => {
    const group = (patients: Parameters<typeof countsOf>[0]) => rateFigure(countsOf(patients));
    // 27 patients with all of 4 uses: by hand the design effect is 4·K/(K − 1), K = 750.
    const likely = group([...alike(27, 4, 4), ...alike(723, 0, 4)]);
    const figures = [...nine, one("X", 27, 300)];
    const effect = (4 * 750) / 749;
    expect(pooledOf([likely, ...figures], perUse)?.designEffect).toBeCloseTo(effect, 10);
    const { upper } = tailProbability(27 / effect, 300 / effect, 0.036);
    const flag = page([likely, ...figures]).flagged.at(-1)?.flag;
    expect(flag?.p).toBeCloseTo(2 * upper, 12);
    // Looked at first with independent uses; like 75 uses the rate is no flag: 20 times the tail is over .05.
    expect(20 * upper).toBeGreaterThan(0.05);
    expect(flag?.tier).toBeNull();
    const even = group([...alike(108, 1, 4), ...alike(642, 0, 4)]);
    expect(even.clustered?.designEffect).toBeLessThan(1);
    expect(page([even, ...figures]).flagged.at(-1)?.flag.p).toBe(
      page(figures).flagged.at(-1)?.flag.p,
    );
  });

  it("counts all measures of a page together and keeps the order given", () => {
    const reset = ["D1", "D2", "D3"].map((code) => one(code, 96, 100, timer));
    const mixed = [reset[0], ...nine, ...reset.slice(1), one("X", 27, 300)] as Figure[];
    const found = page(mixed);
    expect(found.m).toBe(13);
    expect(found.flagged.map(({ figure }) => figure)).toEqual(mixed);
    expect(found.flagged[0]?.pooled.rate).toBe(0.96);
    // By hand: the smallest of 13 probabilities times 13.
    const last = found.flagged.at(-1)?.flag;
    expect(last?.adjusted).toBeCloseTo(13 * (last?.p ?? 0), 15);
  });

  it("follows the levels in force", () => {
    const figures = [...nine, one("X", 20, 300)];
    const adjusted = page(figures).flagged.at(-1)?.flag.adjusted ?? 0;
    const at = (look: number, lookFirst: number) =>
      flaggedOf(figures, { look, lookFirst }).flagged.at(-1)?.flag.tier;
    expect(adjusted).toBeGreaterThan(0);
    expect(at(adjusted * 1.01, adjusted / 2)).toBe("look");
    expect(at(adjusted * 0.99, adjusted / 2)).toBeNull();
    expect(at(0.2, adjusted * 1.01)).toBe("look-first");
  });
});

describe("what takes no part", () => {
  it("is a figure without units, a whole, a median, and what passes through several hands", () => {
    const found = page([
      ...nine,
      one("N", 0, 0),
      rateFigure({ numerator: 300, denominator: 300 }),
      rateFigure({ subject: { kind: "practice", code: "P1" }, numerator: 99, denominator: 100 }),
      one("I", 50, 60, "separation-per-instrument"),
      medianFigure({ subject: clinician("M") }),
    ]);
    expect(found.m).toBe(9);
    expect(found.flagged.every(({ pooled }) => pooled.rate === 0.03)).toBe(true);
    expect(found.notAssessable).toEqual([]);
  });

  it("is a criterion of which too little is recorded: it is named instead", () => {
    const thin = rateFigure({
      subject: clinician("T"),
      measure: timer,
      numerator: 50,
      denominator: 100,
      notRecorded: 50,
      notMet: 0,
    });
    expect(thin.inTheseRecords).toBe("not assessable");
    const others = ["D1", "D2"].map((code) => one(code, 96, 100, timer));
    const found = page([...others, thin]);
    expect([found.m, found.notAssessable]).toEqual([2, [thin]]);
  });

  it("does not draw the pooled rate down: where nobody else differs, nobody is flagged for it", () => {
    const silent = rateFigure({
      subject: clinician("T"),
      measure: timer,
      numerator: 0,
      denominator: 300,
      notRecorded: 300,
      notMet: 0,
    });
    const others = Array.from({ length: 9 }, (_, place) => one(`D${place}`, 285, 300, timer));
    const found = page([...others, silent]);
    expect(found.flagged.map(({ flag }) => flag.tier)).toEqual(new Array(9).fill(null));
    expect(found.flagged[0]?.pooled.rate).toBe(0.95);
    // Where nobody can be judged there is still a rate, and no flag.
    expect(pooledOf([silent], timer)?.units).toBe(300);
    expect(page([silent])).toMatchObject({ m: 0, notAssessable: [silent] });
  });

  it("leaves an empty page without flags", () => {
    expect(page([])).toMatchObject({ m: 0, chance: 0, flagged: [], notAssessable: [] });
  });
});

describe("what could have been seen", () => {
  it("is a higher rate of what should be rare, at what a lone outlier among all must clear", () => {
    const found = page([...nine, one("X", 9, 300)]).flagged[0];
    expect(found?.detectable).toBe(smallestDetectable(300, 0.03, 0.05 / 20, 0.8));
    expect(found?.detectable).toBeGreaterThan(0.03);
  });

  it("is a lower rate of what should be frequent", () => {
    const reset = ["D1", "D2", "D3", "D4"].map((code) => one(code, 180, 200, timer));
    const found = page(reset).flagged[0];
    const mirrored = smallestDetectable(200, 1 - 0.9, 0.05 / 8, 0.8) ?? Number.NaN;
    expect(found?.detectable).toBe(1 - mirrored);
    expect(found?.detectable).toBeLessThan(0.9);
  });

  it("is nothing of so few units that no count would have shown", () => {
    expect(tierOf([one("A", 1, 2), one("B", 1, 2)], "A")).toBeNull();
    expect(page([one("A", 1, 2), one("B", 1, 2)]).flagged[0]?.detectable).toBeNull();
  });
});
