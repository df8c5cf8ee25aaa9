import { describe, expect, it } from "vitest";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { standardLevels } from "@/lib/audit/flag-levels";
import { flaggedOf } from "@/lib/audit/flagged";
import { beyondChance, flagOf } from "@/lib/views/beyond-chance";
import { levelsView, promiseOf } from "@/lib/views/flag-levels";
import {
  couldHaveBeenSeen,
  flagWords,
  notAssessableWords,
  promiseWords,
} from "@/lib/views/flag-words";
import { percent } from "@/lib/views/quantity";
import { clinician, rateFigure } from "./made-figure";
import { measured } from "./measured";

// Expected values: the project's own wording; numbers worked by hand from the counts written here.

const timer = "criterion/timer-reset";
const one = (code: string, x: number, n: number, measure = "separation-per-use"): RateFigure =>
  rateFigure({ subject: clinician(code), measure, numerator: x, denominator: n, notMet: n - x });
const nine = Array.from({ length: 9 }, (_, place) => one(`C${place + 1}`, 9, 300));
const page = (figures: readonly Figure[]) => flaggedOf(figures, standardLevels);

describe("a flag", () => {
  it("is told with its counts, beside the rate of all, and is no verdict", () => {
    const last = page([...nine, one("X", 27, 300)]).flagged.at(-1);
    // 27 of 300 is 9 %; 108 of 3,000 is 3.6 %.
    expect(last && flagWords(last, "X, P1")).toBe(
      "Look first: Instrument separation per use, clinician X, P1, 27 of 300 uses, 9.00 %; higher than the 3.60 % of all shown by more than chance easily gives.",
    );
  });

  it("on the better side says so: fewer separations, more met", () => {
    const fewer = page([...nine, one("X", 0, 900)]).flagged.at(-1);
    expect(fewer && flagWords(fewer, "X")).toMatch(/lower than .* That is the better side/);
    const reset = [1, 2, 3].map((at) => one(`D${at}`, 240, 300, timer));
    const more = page([...reset, one("X", 300, 300, timer)]).flagged.at(-1);
    expect(more && flagWords(more, "X")).toMatch(/higher than .* That is the better side/);
    const less = page([...reset, one("X", 150, 300, timer)]).flagged.at(-1);
    expect(less && flagWords(less, "X")).toMatch(/lower than .* gives\.$/);
  });
});

describe("what could have been seen", () => {
  it("is a rate or more of what should be rare, or less of what should be frequent", () => {
    const [rare] = page([...nine, one("X", 9, 300)]).flagged;
    expect(rare && couldHaveBeenSeen(rare)).toBe(
      `a true rate of ${percent(rare?.detectable ?? 0)} or more would have been seen four times in five`,
    );
    const [often] = page([one("A", 180, 200, timer), one("B", 180, 200, timer)]).flagged;
    expect(often && couldHaveBeenSeen(often)).toMatch(/^a true rate of [\d.]+ % or less would/);
  });

  it("is nothing with the same in all units, or with too few", () => {
    const [none] = page([one("A", 0, 40), one("B", 0, 40)]).flagged;
    expect(none && couldHaveBeenSeen(none)).toMatch(/nothing to compare$/);
    const [few] = page([one("A", 1, 2), one("B", 1, 2)]).flagged;
    expect(few && couldHaveBeenSeen(few)).toMatch(/^so few units/);
  });
});

describe("the promise", () => {
  it("gives the number of figures, what chance does with them, and the levels", () => {
    // 5 % of 10 is 0.5; of 400 is 20.
    expect(promiseWords(page([...nine, one("X", 9, 300)]))).toBe(
      "10 figures are compared on this page; by chance alone about 0.5 would lie outside 95 % limits, so that is not a flag here. Where nobody differs, at most 5 pages in 100 show a look, and at most 2 pages in 1,000 a look first.",
    );
    expect(promiseWords(page([one("A", 9, 300)]))).toMatch(/^One figure is compared/);
    expect(promiseWords({ ...page(nine), m: 400, chance: 20 })).toMatch(/about 20 would/);
    expect(promiseWords(page([]))).toBe("No clinician's rate on this page can be compared.");
  });

  it("has its shares as whole pages", () => {
    expect(promiseOf({ look: 0.01, lookFirst: 0.0005 })).toBe(
      "Where nobody differs, at most 1 page in 100 show a look, and at most 5 pages in 10,000 a look first.",
    );
    expect(promiseOf({ look: 0.025, lookFirst: 0.002 })).toMatch(/at most 25 pages in 1,000 show/);
  });
});

describe("the page's flags", () => {
  const figures = [
    one("C10", 9, 300),
    one("C2", 9, 300),
    one("X", 15, 100),
    ...[1, 2, 3].map((at) => one(`R${at}`, 95, 100, timer)),
  ];
  const found = page(figures);

  it("stand in the order of measures and codes, flagged and quiet apart, no two with the same name", () => {
    const view = beyondChance(found, { period: "2026-Q3" });
    expect(view.flags.map(({ words }) => words.split(",")[1])).toEqual([" clinician X"]);
    expect(view.flags[0]?.href).toBe(
      "/lead/measures/separation-per-use?period=2026-Q3&span=quarter#chance",
    );
    const names = view.quiet.measures.map(({ lines }) => lines.map(([name]) => name));
    expect(names).toEqual([
      ["C2, P1", "C10, P1"],
      ["R1, P1", "R2, P1", "R3, P1"],
    ]);
    expect(view.quiet.count).toBe(5);
    const ids = view.quiet.measures.flatMap(({ title, lines }) =>
      lines.map(([name]) => `${title} ${name}`),
    );
    expect(new Set(ids).size).toBe(5);
    expect(view.notAssessable).toBeNull();
    expect(view.howToLook).toMatch(/only then the person/);
  });

  it("mark a figure of the page, and nothing that takes no part", () => {
    expect(flagOf(found, figures[2] as Figure)).toBe("look first");
    expect(flagOf(found, figures[0] as Figure)).toBeNull();
    expect(flagOf(found, rateFigure({}))).toBeNull();
  });

  it("name what takes no part for want of records", () => {
    const thin = rateFigure({
      subject: clinician("T"),
      measure: timer,
      numerator: 50,
      notRecorded: 40,
      notMet: 10,
    });
    expect(beyondChance(page([...figures, thin]), {}).notAssessable).toBe(
      "Too little is recorded to judge, so these take no part: Timer reset for the canal of T, P1 (60 of 100 recorded).",
    );
    expect(notAssessableWords([], () => "")).toBeNull();
    // Seven figures of two criteria would be a wall of words.
    const seven = Array.from({ length: 7 }, (_, place) => ({
      ...thin,
      ...(place < 2 ? measured("criterion/isolation") : {}),
    }));
    expect(notAssessableWords(seven, () => "")).toBe(
      "Too little is recorded to judge 7 figures, so they take no part: clinicians' of Isolation by rubber dam (2), Timer reset for the canal (5). Under “Criteria” they are marked as not assessable.",
    );
  });
});

describe("the levels", () => {
  it("are told with the reason of the latest and what was before, the standard last", () => {
    const at = new Date("2026-11-03T09:00:00Z");
    const of = (look: number, reason: string) => ({ look, lookFirst: 0.001, reason, by: "B", at });
    const view = levelsView(standardLevels, [of(0.01, "two"), of(0.1, "one")], true);
    expect(view).toMatchObject({ look: "1 %", lookFirst: "0.1 %", reason: "two (B, 3 Nov 2026)" });
    expect(view.fields).toEqual({ look: "1", lookFirst: "0.1" });
    expect(view.before[0]?.words).toBe(
      "look under 10 %, look first under 0.1 %: one (B, 3 Nov 2026)",
    );
    expect(view.before[1]?.words).toMatch(/^look under 5 %, look first under 0.2 %: The shares/);
    expect(new Set(view.before.map(({ id }) => id)).size).toBe(2);
  });
});
