import { describe, expect, it } from "vitest";
import { caseMixOf } from "@/lib/audit/case-mix";
import { standardLevels } from "@/lib/audit/flag-levels";
import { flaggedOf } from "@/lib/audit/flagged";
import { funnelOf } from "@/lib/audit/funnel";
import { pooledOf } from "@/lib/audit/pooled";
import type { SeparationCusum } from "@/lib/audit/separation-cusum";
import { shrunkenOf } from "@/lib/audit/shrunken";
import type { RateTally } from "@/lib/measures/tally";
import { caseMixView } from "@/lib/views/case-mix-view";
import { cusumChart } from "@/lib/views/cusum-chart";
import { funnelChart } from "@/lib/views/funnel-chart";
import { clinician, rateFigure } from "./made-figure";
import { measured } from "./measured";

// Expected values: the project's own wording; numbers worked by hand from the counts written here.

const measure = "separation-per-canal";
const one = (code: string, numerator: number, denominator: number, more: Partial<RateTally> = {}) =>
  rateFigure({ subject: clinician(code), measure, numerator, denominator, ...more });

describe("the funnel", () => {
  const draw = (figures: ReturnType<typeof one>[], designEffect = 1) => {
    const pooled = pooledOf(figures, measure);
    if (!pooled) throw new Error("nobody");
    return funnelChart({
      measure: measured(measure),
      page: flaggedOf(figures, standardLevels),
      funnel: funnelOf(figures, pooled),
      pooled: { ...pooled, designEffect },
      shrunken: shrunkenOf(figures),
      hrefOf: ({ figure }) => ("code" in figure.about ? `#${figure.about.code}` : undefined),
    });
  };
  const alike = [one("A", 4, 200), one("B", 4, 200), one("C", 4, 200)];

  it("has a point a clinician, limits clipped to what a rate can be, and a finding", () => {
    const view = draw(alike);
    expect(view.title).toBe(
      "Instrument separation per canal: no clinician's rate differs from that of all shown by more than chance easily gives",
    );
    expect(view.centre).toEqual({ value: 0.02, words: "all shown 2.00 %" });
    expect(
      view.points.map(({ id, units, estimate, flag, href }) => [id, units, estimate, flag, href]),
    ).toEqual(["A", "B", "C"].map((code) => [`P1/${code}`, 200, 0.02, null, `#${code}`]));
    const ends = view.limits.flatMap(({ lower998, upper998 }) => [lower998, upper998]);
    expect(Math.min(...ends)).toBe(0);
    expect(Math.max(...ends)).toBeLessThanOrEqual(1);
    expect(view.notes.some((note) => note.startsWith("No extra variation"))).toBe(true);
    expect(view.notes.some((note) => note.includes("design effect"))).toBe(false);
  });

  it("counts the flags in its title, tells the design effect, and has reliability beside the shrunken rate", () => {
    const view = draw([...alike, one("X", 12, 60)], 1.5);
    expect(view.title).toMatch(/: one clinician's rate differs from/);
    expect(view.points.at(-1)).toMatchObject({ flag: "look first" });
    expect(view.points.at(-1)?.words).toMatch(/^X, P1: 12 of 60, 20\.0 %, .* Look first\.$/);
    expect(view.notes.some((note) => note.includes("design effect 1.50"))).toBe(true);
    const cells = view.table.rows.map((row) => row.cells);
    expect(cells).toHaveLength(4);
    expect(view.table.head.slice(-2)).toEqual(["Shrunken rate", "Reliability"]);
    // Drawn towards everyone's: under 20 %, and over 2 % for those under it.
    expect(Number.parseFloat(cells.at(-1)?.at(-2) ?? "")).toBeLessThan(20);
    expect(Number.parseFloat(cells[0]?.at(-2) ?? "")).toBeGreaterThan(2);
  });
});

describe("observed and expected", () => {
  const stratum = (tooth: string, curvature: string | null) =>
    ({ by: "case", tooth, curvature, treatment: "primary" }) as const;
  const mix = (curvature: string | null) => {
    const front = { stratum: stratum("front", curvature) };
    const molar = { stratum: stratum("molar", curvature) };
    const group = { kind: "group" } as const;
    const apart = [
      one("A", 3, 80, front),
      one("B", 1, 20, front),
      one("A", 1, 10, molar),
      one("A", 4, 100, { ...front, subject: group }),
      one("A", 1, 10, { ...molar, subject: group }),
    ];
    return caseMixView(measure, caseMixOf(apart, [one("B", 1, 20), one("A", 4, 90)]));
  };

  it("stand in the order of codes, with what is left out and who is much of the reference", () => {
    const view = mix(null);
    // A: 3 observed, 80·4/100 = 3.2 expected; 90 of 110 units. B: 1 against .8; 20 of 110.
    expect(view.rows.map((row) => [row.name, row.observed, row.expected, row.ratio])).toEqual([
      ["A, P1", "3", "3.20", "0.94"],
      ["B, P1", "1", "0.80", "1.25"],
    ]);
    expect(view.rows[0]?.notes).toBe(
      "10 canals in 1 thin cell, 1 separated; is 81.8 % of those compared with, which draws it to 1",
    );
    expect(view.rows[1]?.notes).toBe("none");
    // One event: .0253 to 5.5716 (Ulm 1990), over .8.
    expect(view.rows[1]?.interval).toBe("0.03 to 6.96");
    expect(view.cells.map(({ id }) => id)).toHaveLength(2);
    expect(new Set(view.cells.map(({ id }) => id)).size).toBe(2);
  });

  it("say where curvature adjusts for nothing", () => {
    expect(mix(null).notes.at(-1)).toMatch(/^Curvature is recorded for no canal/);
    expect(mix("slight").notes.at(-1)).not.toMatch(/^Curvature is recorded for no canal/);
  });
});

describe("the running sum", () => {
  const canals = [false, true, true, false].map((event, place) => ({
    day: `2026-07-0${place + 1}`,
    practice: "NORTH",
    sessionId: `s/${place}`,
    canal: "main",
    event,
  }));
  const cusum: SeparationCusum = {
    path: [0, 0.7, 1.4, 0],
    signals: [2],
    limit: 1.3,
    averageRun: 1234.4,
    standardError: 20.6,
    baseline: { events: 3, canals: 150 },
    byCase: false,
  };
  const draw = (more: Partial<SeparationCusum> = {}) =>
    cusumChart({
      cusum: { ...cusum, ...more },
      canals,
      whose: "clinician A1",
      baselineWords: "2025",
      spanWords: "2026",
    });

  it("begins at 0, begins there again after a signal, and marks events and signals", () => {
    const view = draw();
    expect(view.path).toEqual([
      { canals: 0, sum: 0 },
      { canals: 1, sum: 0 },
      { canals: 2, sum: 0.7 },
      { canals: 3, sum: 1.4 },
      { canals: 3, sum: 0 },
      { canals: 4, sum: 0 },
    ]);
    expect(view.points.map(({ canals: at, signal }) => [at, signal])).toEqual([
      [2, false],
      [3, true],
    ]);
    expect(view.points[1]?.words).toBe(
      "Canal 3, 3 Jul 2026: separation, running sum 1.40, at the limit: a signal.",
    );
    expect(view.points[1]?.href).toBe("/visits/NORTH/s%2F2");
    expect(view.table.rows[1]?.cells).toEqual(["3", "3 Jul 2026", "1.40", "separation, signal"]);
    expect(view.up.max).toBeGreaterThanOrEqual(1.4);
  });

  it("says after how many canals it signalled, how often, or that it did not", () => {
    expect(draw().title).toBe(
      "Separations of clinician A1, 2026: 2 in 4 canals, a signal after 3 canals",
    );
    expect(draw({ signals: [1, 2] }).title).toMatch(/, 2 signals, the first after 2 canals$/);
    expect(draw({ signals: [] }).title).toMatch(/, no signal$/);
  });

  it("prints its baseline, its limit with the false alarms, and that no promise counts it", () => {
    const notes = draw().notes.join("\n");
    expect(notes).toMatch(/3 separations in 150 canals, 2\.00 %, 2025, the same for every canal/);
    expect(notes).toMatch(/^Limit 1\.30: .* once in 1.234 canals \(± 21\), 10 years/m);
    expect(notes).toMatch(/does not count its signals/);
    expect(draw({ byCase: true }).notes.join("\n")).toMatch(/by tooth group, curvature/);
  });
});
