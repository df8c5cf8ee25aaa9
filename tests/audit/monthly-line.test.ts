import { describe, expect, it, test } from "vitest";
import type { Figure } from "@/lib/audit/figure";
import { monthlyLine } from "@/lib/audit/monthly-line";
import { monthsUpTo } from "@/lib/records/period";
import { pChart, uChart, xmrChart } from "@/lib/statistics/control-chart";
import { medianFigure, rateFigure } from "../views/made-figure";

// Expected values: worked by hand, or computed by the charts of lib/statistics (held to published values).

const names = monthsUpTo("2026-10-01", 24).map(({ name }) => name);
const timer = "criterion/timer-reset";

const line = (figures: readonly (Figure | undefined)[], rebases: readonly string[] = []) =>
  monthlyLine(
    figures.map((figure, place) => ({ month: names[place] ?? "", figure })),
    rebases,
  );
const median = (value: number, n = 20) => medianFigure({ n, median: value, bounds: null });
const rate = (numerator: number, denominator: number, measure = timer) =>
  rateFigure({ measure, numerator, denominator, notMet: denominator - numerator });

describe("months of medians", () => {
  it("have an XmR chart: by hand, 10 and 12 in turn have the mean 11 and moving ranges of 2", () => {
    const { points, segments } = line([10, 12, 10, 12].map((value) => median(value)));
    expect(segments).toMatchObject([{ from: 0, to: 4, chart: "xmr", why: null }]);
    expect(points[0]?.centre).toBe(11);
    // 2.659574 mean moving ranges (published factor 3/1.128).
    expect(points[0]?.upper).toBeCloseTo(11 + 2.659574 * 2, 12);
    expect(points[0]?.lower).toBeCloseTo(11 - 2.659574 * 2, 12);
  });

  it("are gaps under ten units and where there is no figure, and no range goes across a gap", () => {
    const values = [median(10), median(99, 9), median(12), median(13), undefined, median(20)];
    const { points } = line(values);
    expect(points.map(({ value }) => value)).toEqual([10, null, 12, 13, null, 20]);
    expect(points.map(({ units }) => units)).toEqual([20, 9, 20, 20, 0, 20]);
    // The one range is 12 to 13; the mean of 10, 12, 13 and 20 is 13.75.
    expect(points[0]?.centre).toBe(13.75);
    expect(points[0]?.upper).toBeCloseTo(13.75 + 2.659574, 12);
    expect([points[5]?.outside, points[0]?.outside]).toEqual(["above", "below"]);
    expect(points[1]).toMatchObject({ lower: null, upper: null, outside: null });
    // Ten units stand.
    expect(line([median(10, 10), median(12, 10)]).points[0]?.value).toBe(10);
  });

  it("have no limits where one has over four times the units of another, and say so", () => {
    const uneven = line([median(10, 10), median(12, 41)]);
    expect(uneven.segments[0]?.why).toBe("uneven-months");
    expect(uneven.points[0]).toMatchObject({ value: 10, centre: null, upper: null });
    expect(line([median(10, 10), median(12, 40)]).segments[0]?.why).toBeNull();
  });

  it("have none without neighbours, variation or units either", () => {
    expect(line([median(10), undefined, median(12)]).segments[0]?.why).toBe("no-neighbours");
    expect(line([median(10), median(10)]).segments[0]?.why).toBe("no-variation");
    expect(line([undefined, median(10, 3)]).segments[0]).toMatchObject({
      why: "no-units",
      runs: null,
    });
  });

  it("run around the median of the months that stand", () => {
    const shifted = [...new Array(12).fill(10), ...new Array(12).fill(14)].map((value, place) =>
      median(value + (place % 2) / 10),
    );
    const { runs } = line(shifted).segments[0] ?? {};
    // 24 points: longest run 8, crossings 8 (Anhøj & Olesen 2014); here 12 in a row and one crossing.
    expect(runs).toMatchObject({
      useful: 24,
      longestRun: 12,
      longestRunLimit: 8,
      crossings: 1,
      crossingsLimit: 8,
      signal: true,
    });
  });
});

describe("months of rates", () => {
  const calm = [90, 92, 89, 91, 90, 88].map((events) => rate(events, 100));

  it("have a p chart by each month's units", () => {
    const { points, segments } = line([...calm, rate(45, 50), rate(0, 0)]);
    const counts = [90, 92, 89, 91, 90, 88].map((events) => ({ events, units: 100 }));
    const expected = pChart([...counts, { events: 45, units: 50 }, null]);
    expect(segments[0]).toMatchObject({ chart: "p", why: null, showsWorsening: true });
    // By hand: 585 of 650.
    expect(points[0]?.centre).toBeCloseTo(0.9, 12);
    expect(points.map(({ lower }) => lower)).toEqual(
      expected?.points.map((point) => point?.lower ?? null),
    );
    expect(points.at(-1)).toMatchObject({ value: null, units: 0 });
  });

  it("have a p′ chart where the months differ beyond chance", () => {
    const wild = [500, 900, 520, 880, 490, 910].map((events) => rate(events, 1000));
    expect(line(wild).segments[0]).toMatchObject({ chart: "p-prime", why: null });
  });

  it("have a u chart of separations over uses", () => {
    const events = [3, 2, 4, 3];
    const { points, segments } = line(events.map((x) => rate(x, 200, "separation-per-use")));
    expect(segments[0]?.chart).toBe("u");
    expect(points[0]?.centre).toBe(12 / 800);
    const expected = uChart(events.map((x) => ({ events: x, exposure: 200 })));
    expect(points[0]?.upper).toBe(expected?.points[0]?.upper);
  });

  it("have no limits where nothing or everything happened", () => {
    expect(line([rate(5, 5), rate(9, 9)]).segments[0]).toMatchObject({
      chart: "p",
      why: "no-variation",
    });
    expect(line([rate(0, 0)]).segments[0]?.why).toBe("no-units");
  });
});

test("runs say nothing where half of the months lie at its end, of a rate and not of a median", () => {
  const full = [10, 10, 10, 10, 10, 9, 8].map((met) => rate(met, 10));
  expect(line(full).segments[0]?.runs).toBeNull();
  expect(line([9, 9, 9, 10].map((met) => rate(met, 10))).segments[0]?.runs).not.toBeNull();
  expect(line([0, 0, 0, 3].map((value) => median(value))).segments[0]?.runs).not.toBeNull();
});

describe("a rebase", () => {
  it("begins a segment with a centre, limits and runs of its own", () => {
    const values = [10, 12, 10, 12, 20, 24, 20, 24];
    const { points, segments } = line(
      values.map((value) => median(value)),
      [names[4] ?? ""],
    );
    expect(segments.map(({ from, to }) => [from, to])).toEqual([
      [0, 4],
      [4, 8],
    ]);
    expect([points[3]?.centre, points[4]?.centre]).toEqual([11, 22]);
    const later = xmrChart([20, 24, 20, 24].map((value) => ({ value, n: 20 })));
    if (!later.drawn) throw new Error("not drawn");
    expect(points[4]?.upper).toBe(later.points[0]?.upper);
    expect(segments[1]?.runs?.useful).toBe(4);
  });

  it("before the first month, after the last, or twice in one place splits nothing more", () => {
    const values = [10, 12, 10, 12].map((value) => median(value));
    const at = names[2] ?? "";
    expect(line(values, ["2020-01", names[0] ?? "", "2030-01"]).segments).toHaveLength(1);
    expect(line(values, [at, at]).segments).toHaveLength(2);
  });

  it("without figures behind it leaves the kind of chart as it is", () => {
    const { segments } = line([rate(9, 10), rate(8, 10), undefined, undefined], [names[2] ?? ""]);
    expect(segments.map(({ chart, why }) => [chart, why])).toEqual([
      ["p", null],
      ["p", "no-units"],
    ]);
  });
});
