import { describe, expect, it } from "vitest";
import { endsAtBest } from "@/lib/audit/clustered";
import { medianEnds } from "@/lib/audit/median-ends";
import { clusteredProportion } from "@/lib/statistics/clustered-proportion";
import { clopperPearson, wilson } from "@/lib/statistics/proportion-interval";
import { wilsonEnds } from "@/lib/statistics/wilson-ends";
import { medianFigure, rateFigure } from "../views/made-figure";
import { alike, countsOf } from "./made-clusters";

// Expected values: computed by lib/statistics (held to published values) on the patients written out here, or worked by
// hand where that is said.

const timer = "criterion/timer-reset"; // target 95 %, completeness floor 90 %: the project's own

describe("the clustered interval of a rate", () => {
  it("is that of lib/statistics on the same patients, with its width over Wilson's", () => {
    const patients = [...alike(6, 2, 4), ...alike(30, 0, 3), { events: 1, units: 2 }];
    const figure = rateFigure({ ...countsOf(patients), measure: "separation-per-canal" });
    const expected = clusteredProportion(patients, 0.95);
    const plain = wilson(13, 116, 0.95);
    if (!expected?.interval || !plain) throw new Error("no interval");
    expect([figure.numerator, figure.denominator]).toEqual([13, 116]);
    expect(figure.clustered).toMatchObject(expected.interval);
    expect(figure.clustered?.designEffect).toBe(expected.designEffect);
    expect(figure.clustered?.effectiveUnits).toBe(expected.effectiveN);
    expect(figure.clustered?.clusters).toBe(37);
    // The plain interval beside a separation is Clopper and Pearson's; how much wider compares with Wilson's.
    expect(figure.interval?.method).toBe("clopper-pearson");
    expect(figure.clustered?.timesPlain).toBeCloseTo(
      (expected.interval.upper - expected.interval.lower) / (plain.upper - plain.lower),
      12,
    );
  });

  it("counts patients, where patients are all or nothing: by hand, 40 of 5 canals each weigh like 40 × 39/40", () => {
    const figure = rateFigure(countsOf([...alike(36, 5, 5), ...alike(4, 0, 5)]));
    // v = K/(K−1)·Σ(e − p·n)²/n² = 40/39 · p(1−p)/40, so the design effect is 5·40/39 and 200 units weigh like 39.
    expect(figure.clustered?.designEffect).toBeCloseTo((5 * 40) / 39, 12);
    expect(figure.clustered?.effectiveUnits).toBeCloseTo(39, 10);
  });

  it("never weighs more than the units there are", () => {
    // One event in each patient of four: they differ by nothing, so the design effect is 0.
    const figure = rateFigure(countsOf(alike(25, 1, 4)));
    expect(figure.clustered?.designEffect).toBe(0);
    expect(figure.clustered?.effectiveUnits).toBe(100);
  });

  it("stands on the patients alone where no event was seen, and tells no design effect", () => {
    const figure = rateFigure(countsOf(alike(50, 0, 4)));
    const exact = clopperPearson(0, 50, 0.95);
    expect(figure.clustered).toMatchObject({
      lower: 0,
      upper: exact?.upper,
      method: "clustered-clopper-pearson",
      designEffect: null,
      effectiveUnits: null,
      clusters: 50,
    });
    // By hand: 1 − .025^(1/50).
    expect(figure.clustered?.upper).toBeCloseTo(1 - 0.025 ** (1 / 50), 12);
  });

  it("does not exist for one patient, for units in no patient, or without units", () => {
    expect(rateFigure(countsOf([{ events: 2, units: 40 }])).clustered).toBeNull();
    expect(rateFigure({ ...countsOf(alike(9, 1, 3)), clusters: null }).clustered).toBeNull();
    expect(rateFigure(countsOf([])).clustered).toBeNull();
  });
});

describe("the verdict beyond chance", () => {
  it("is by the clustered interval: what 200 independent canals would settle, 40 patients do not", () => {
    const settled = rateFigure({ ...countsOf(alike(40, 0, 1)), measure: timer });
    expect(settled.beyondChance).toBe("missed");
    const counts = countsOf([...alike(36, 5, 5), ...alike(4, 0, 5)]);
    const clustered = rateFigure({ ...counts, measure: timer });
    const plain = rateFigure({ ...counts, clusters: null, measure: timer });
    expect(plain.interval?.upper).toBeLessThan(0.95);
    expect(clustered.clustered?.upper).toBeGreaterThan(0.95);
    expect([plain.beyondChance, clustered.beyondChance]).toEqual([
      "missed",
      "not settled by this many",
    ]);
    expect(clustered.inTheseRecords).toBe("not reached");
  });

  it("is reached only where the whole clustered interval is at the target", () => {
    const counts = countsOf([...alike(99, 10, 10), { events: 0, units: 10 }]);
    expect(rateFigure({ ...counts, clusters: null, measure: timer }).beyondChance).toBe("reached");
    const clustered = rateFigure({ ...counts, measure: timer });
    expect(clustered.clustered?.lower).toBeLessThan(0.95);
    expect(clustered.beyondChance).toBe("not settled by this many");
  });

  it("is missed only where the target is out of reach with every unrecorded unit met", () => {
    // 170 of 200 met, 16 not recorded: at best 186 of 200, whose interval holds 95 %. Six times as much does not.
    const patients = [...alike(170, 1, 1), ...alike(30, 0, 1)];
    const once = { ...countsOf(patients), measure: timer, notRecorded: 16, notMet: 14 };
    expect(rateFigure(once).clustered?.upper).toBeLessThan(0.95);
    expect(rateFigure(once).beyondChance).toBe("not settled by this many");
    const six = Array.from({ length: 6 }, () => patients).flat();
    const often = { ...countsOf(six), measure: timer, notRecorded: 96, notMet: 84 };
    expect(rateFigure(often).beyondChance).toBe("missed");
  });

  it("takes as ends at best Wilson's at the best rate and the effective units, or the patients where these say nothing", () => {
    const tally = (events: number, notRecorded: number) => {
      const patients = [...alike(events, 4, 4), ...alike(20 - events, 0, 4)];
      return { ...countsOf(patients), measure: timer, notRecorded };
    };
    // Student's t for 19 degrees of freedom, 97.5 %: 2.093024 (published tables).
    const reach = medianEnds(0.95).reach(20) ?? Number.NaN;
    expect(reach).toBeCloseTo(2.093024, 6);
    const some = rateFigure(tally(15, 4));
    const ends = (figure: typeof some, given: ReturnType<typeof tally>) => {
      if (!figure.clustered) throw new Error("no interval");
      return endsAtBest({ ...given, ...fixed }, figure.clustered);
    };
    expect(ends(some, tally(15, 4))).toEqual(
      wilsonEnds(64 / 80, some.clustered?.effectiveUnits ?? 0, reach),
    );
    expect(ends(rateFigure(tally(0, 4)), tally(0, 4))).toEqual(wilsonEnds(4 / 80, 20, reach));
    const all = rateFigure(tally(15, 0));
    expect(ends(all, tally(15, 0))).toBe(all.clustered);
  });
});

describe("the clustered interval of a median", () => {
  const ends = { lower: 15, upper: 21, designEffect: 2.5, clusters: 12 };

  it("says how much wider it is than the order statistics, and what its values weigh", () => {
    const figure = medianFigure({ n: 10, bounds: [17, 20], clustered: ends });
    // By hand: 6 mL over 3 mL; 10 values over 2.5.
    expect(figure.clustered).toEqual({
      lower: 15,
      upper: 21,
      level: 0.95,
      method: "woodruff",
      designEffect: 2.5,
      effectiveUnits: 4,
      clusters: 12,
      timesPlain: 2,
    });
  });

  it("weighs no more than its values, and has no comparison where the plain one has no width or is not there", () => {
    const narrow = medianFigure({ bounds: [18, 18], clustered: { ...ends, designEffect: 0.5 } });
    expect([narrow.clustered?.effectiveUnits, narrow.clustered?.timesPlain]).toEqual([10, null]);
    expect(medianFigure({ bounds: null, clustered: ends }).clustered?.timesPlain).toBeNull();
    expect(medianFigure({ clustered: null }).clustered).toBeNull();
  });

  it("asks the store for ranks and reach that exist", () => {
    const at95 = medianEnds(0.95);
    // Ranks [2, 9] for 10 values and none for 5: published with the order-statistic interval.
    expect(at95.ranks(10)).toMatchObject({ lower: 2, upper: 9 });
    expect([at95.ranks(5), at95.reach(1), at95.reach(0)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

const fixed = {
  kind: "rate",
  subject: { kind: "group" },
  period: { name: "2026-Q3", from: "2026-07-01", until: "2026-10-01" },
  excluded: {},
  excepted: {},
} as const;
