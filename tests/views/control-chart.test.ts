import { describe, expect, it } from "vitest";
import { monthlyLine } from "@/lib/audit/monthly-line";
import { rareLine } from "@/lib/audit/rare-line";
import { monthsUpTo } from "@/lib/records/period";
import { controlChart } from "@/lib/views/control-chart";
import { runWords } from "@/lib/views/run-words";
import { medianFigure, rateFigure } from "./made-figure";
import { measured } from "./measured";

// Expected values: the project's own wording; numbers worked by hand, limits of runs by Anhøj & Olesen 2014.

const names = monthsUpTo("2026-10-01", 24).map(({ name }) => name);
const volumes = (values: readonly (number | null)[], rebases: readonly string[] = []) =>
  monthlyLine(
    names.slice(0, values.length).map((month, place) => {
      const value = values[place] ?? null;
      return {
        month,
        figure: value === null ? undefined : medianFigure({ n: 20, median: value, bounds: null }),
      };
    }),
    rebases,
  );
const chart = (line: ReturnType<typeof volumes>, more = {}) =>
  controlChart({ measure: measured("volume"), whose: "all practices", line, rebases: [], ...more });
const turns = Array.from({ length: 24 }, (_, place) => (place % 2 === 0 ? 10 : 12));

describe("months", () => {
  it("without a signal say so, with no promise to be set apart from", () => {
    const view = chart(volumes(turns));
    expect(view.title).toMatch(
      /^Irrigant volume per canal, all practices, .*: no signal, nothing here that chance alone would not draw$/,
    );
    expect([view.signals, view.notes]).toEqual([[], []]);
    expect(view.rows).toHaveLength(24);
    expect(new Set(view.rows.map(({ id }) => id)).size).toBe(24);
    expect(view.table.rows.map(({ id }) => id)).toEqual(names);
    // Labels at the first and at the beginnings of quarters: 24 months from October have 8.
    expect(view.rows.filter(({ label }) => label).map(({ label }) => label)).toHaveLength(8);
  });

  it("beyond a limit are named with the limit, and outside the promise of flags", () => {
    // Mean of 23 months in turn and one of 40: by hand (12·10 + 11·12 + 40)/24 = 12.17; ranges 22·2 + 30 over 23.
    const values = [...turns.slice(0, 23), 40];
    const view = chart(volumes(values));
    const centre = (12 * 10 + 11 * 12 + 40) / 24;
    const upper = centre + 2.659574 * ((22 * 2 + 30) / 23);
    expect(view.rows.at(-1)?.upper).toBeCloseTo(upper, 9);
    expect(view.signals).toEqual([
      `Sep 2026: 40.0 mL lies above the limit of ${upper.toFixed(1)} mL.`,
    ]);
    expect(view.title).toMatch(/one signal to look at$/);
    expect(view.notes.at(-1)).toMatch(/rule of their own/);
    expect(view.table.rows.at(-1)?.cells.at(-1)).toBe("above the limit");
  });

  it("in a run on one side are a signal of their own", () => {
    const shifted = Array.from({ length: 24 }, (_, at) => (at < 12 ? 10 : 10.5) + (at % 2) / 10);
    const view = chart(volumes(shifted));
    expect(view.signals).toContain(
      "12 points in a row lie on one side of the median; of 24 points chance seldom puts over 8 in a row.",
    );
    expect(view.signals).toContain(
      "The line crosses its median once; with 24 points chance seldom leaves it at fewer than 8.",
    );
  });

  it("without a value are gaps that say why, and lead nowhere", () => {
    const months = [
      { month: "2026-07", figure: medianFigure({ n: 20, median: 10, bounds: null }) },
      { month: "2026-08", figure: medianFigure({ n: 3, median: 99, bounds: null }) },
      { month: "2026-09", figure: undefined },
    ];
    const view = controlChart({
      measure: measured("volume"),
      line: monthlyLine(months, []),
      rebases: [],
      hrefOf: (month) => `#${month}`,
    });
    expect(view.rows.map(({ value }) => value)).toEqual([10, null, null]);
    expect(view.rows.map(({ words }) => words)).toEqual([
      "Jul 2026: 10.0 mL, 20 canals.",
      "Aug 2026: only 3 canals, too few to stand as a month.",
      "Sep 2026: no units.",
    ]);
    expect(view.rows.map(({ href }) => href)).toEqual(["#2026-07", undefined, undefined]);
    expect(view.title).toMatch(/no limits can be drawn$/);
    expect(view.notes[0]).toMatch(/^No two neighbouring months/);
    const cells = view.table.rows.map((row) => row.cells.slice(1, 4));
    expect(cells[1]).toEqual(["none", "3", "none"]);
  });

  it("that are uneven have no limits, and the reason stands there", () => {
    const figure = (n: number, median: number) => medianFigure({ n, median, bounds: null });
    const line = monthlyLine(
      [
        { month: "2026-07", figure: figure(10, 9) },
        { month: "2026-08", figure: figure(41, 12) },
      ],
      [],
    );
    expect(chart(line).notes[0]).toMatch(/over four times the units of the smallest/);
    expect(chart(volumes([null, null])).title).toMatch(/nothing to draw$/);
  });

  it("of shares are in per cent, and without a month at all there is still an axis", () => {
    const figure = (met: number) =>
      rateFigure({ measure: "criterion/timer-reset", numerator: met });
    const line = monthlyLine(
      [90, 92, 88].map((met, place) => ({ month: names[place] ?? "", figure: figure(met) })),
      [],
    );
    const view = controlChart({ measure: measured("criterion/timer-reset"), line, rebases: [] });
    expect(view.kind).toMatch(/^p chart/);
    expect(view.rows[0]?.words).toBe("Oct 2024: 90.0 %, 100 canals.");
    const none = controlChart({ measure: measured("volume"), line: volumes([]), rebases: [] });
    expect(none.axis.ticks.length).toBeGreaterThan(1);
  });
});

describe("a rebase", () => {
  const month = names[12] ?? "";
  const of = { month, reason: "new pump", by: "B", at: "2026-11-03T09:00:00Z" };

  it("stands at its month, or at the first after it, with its reason, who and when", () => {
    const view = chart(volumes(turns, [month]), { rebases: [of] });
    expect(view.rebased).toEqual([
      { id: month, words: "Limits begin anew in Oct 2025: new pump (B, 3 Nov 2026)" },
    ]);
    const later = rareLine("g", rare, ["2026-02"]);
    const drawn = controlChart({
      measure: measured("separation-per-canal"),
      line: later,
      rebases: [{ ...of, month: "2026-02" }],
    });
    expect(drawn.rebased[0]?.id).toBe("2026-03-01 2");
    expect(chart(volumes(turns), { rebases: [{ ...of, month: "2030-01" }] }).rebased).toEqual([]);
  });
});

const rare = {
  units: 400,
  last: "2026-09-30",
  events: [
    { place: 1, day: "2026-01-10" },
    { place: 2, day: "2026-01-10" },
    { place: 3, day: "2026-01-10" },
    { place: 103, day: "2026-03-01" },
  ],
};

describe("spans between separations", () => {
  it("have ids of their own on one day, and the last is so far", () => {
    const view = controlChart({
      measure: measured("separation-per-canal"),
      line: rareLine("g", rare, []),
      rebases: [],
      hrefOf: () => "#",
    });
    expect(view.kind).toMatch(/^g chart: how many canals lie/);
    expect(new Set(view.rows.map(({ id }) => id)).size).toBe(4);
    expect(view.rows.map(({ words }) => words)).toEqual([
      "10 Jan 2026: 0 canals.",
      "10 Jan 2026: 0 canals.",
      "1 Mar 2026: 99 canals.",
      "30 Sep 2026: 297 canals so far since the last separation; above the limit.",
    ]);
    expect(view.rows.every(({ href }) => href === undefined)).toBe(true);
    // Mean 33, so p = 1/34 is over .00135: the lower limit is 0.
    expect(view.notes[0]).toMatch(/cannot show that they have become more frequent/);
  });

  it("are days on a t chart, one day in the singular", () => {
    const events = ["2026-01-10", "2026-01-11", "2026-03-02"].map((day, at) => ({
      place: at,
      day,
    }));
    const line = rareLine("t", { units: 9, last: "2026-03-05", events }, []);
    const view = controlChart({ measure: measured("separation-per-visit"), line, rebases: [] });
    expect(view.kind).toMatch(/^t chart/);
    expect(view.rows.map(({ words }) => words.split(": ")[1])).toEqual([
      "1 day.",
      "50 days.",
      "3 days so far since the last separation.",
    ]);
    expect(view.axis.title).toBe("days between separations");
  });
});

describe("runs in words", () => {
  const quiet = {
    ...{ useful: 24, longestRun: 5, longestRunLimit: 8, crossings: 11, crossingsLimit: 8 },
    ...{ longRun: false, fewCrossings: false, signal: false },
  };

  it("say nothing without a signal", () => {
    expect(runWords(quiet)).toEqual([]);
  });

  it("count crossings: never, once, several times", () => {
    const at = (crossings: number) => runWords({ ...quiet, crossings, fewCrossings: true })[0];
    expect(at(0)).toMatch(/^The line never crosses its median;/);
    expect(at(1)).toMatch(/^The line crosses its median once;/);
    expect(at(7)).toMatch(/^The line crosses its median 7 times;/);
  });
});
