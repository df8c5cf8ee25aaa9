import { expect, test } from "vitest";
import { differenceOf } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import { changeWords } from "@/lib/views/change-words";
import { moreOrLess, rangeMoreOrLess } from "@/lib/views/difference-words";
import { rateOf } from "./made-comparison";
import { medianFigure, rateFigure } from "./made-figure";

const words = (now: Figure, before: Figure) =>
  changeWords({ now, before, difference: differenceOf(now, before) });
const ofQuarter = (figure: Figure): Figure => ({ ...figure, period: "2026-Q2" });

test("a change is told with its interval and whether so many settle it", () => {
  const measure = "criterion/line-rinse";
  const of = (numerator: number, denominator: number) =>
    rateFigure({ measure, numerator, denominator, notMet: denominator - numerator });
  // Newcombe 1998, Stat Med 17:873, method 10: 56/70 v 48/80 .0524–.3339; 5/56 v 0/29 −.0381–.1926.
  expect(words(of(56, 70), ofQuarter(of(48, 80)))).toBe(
    "Against April to June 2026: 20.0 percentage points more (95 % interval +5.2 to +33.4): more than chance easily gives.",
  );
  expect(words(of(5, 56), ofQuarter(of(0, 29)))).toBe(
    "Against April to June 2026: 8.9 percentage points more (95 % interval −3.8 to +19.3): not settled by this many.",
  );
});

test("units of one patient are allowed for, and where they cannot be nothing is settled", () => {
  // Computed (in Python from both clustered Wilson intervals, squared and added): .0900, .0177 to .2584.
  const now = rateOf([
    [3, 2, 2],
    [27, 0, 2],
  ]);
  const before = rateOf([
    [2, 1, 2],
    [98, 0, 2],
  ]);
  expect(words(now, ofQuarter(before))).toBe(
    "Against April to June 2026: 9.0 percentage points more (95 % interval +1.8 to +25.8): more than chance easily gives.",
  );
  // By plain intervals 40 of 40 against 2 of 200 would be settled; they sit in one patient.
  expect(words(rateOf([[1, 40, 40]]), ofQuarter(before))).toBe(
    "Against April to June 2026: too few patients in one of the two for an interval of the difference.",
  );
});

test("medians, a period with a name of its own, and one without an estimate", () => {
  const clustered = { lower: 17, upper: 20, designEffect: 1, clusters: 9 };
  const now = medianFigure({ median: 18, clustered });
  // 18 − 18.6 with ends 1 and 2, 1.6 and 1.4 away: −√(1² + 1.4²), +√(2² + 1.6²), by hand.
  expect(words(now, { ...medianFigure({ clustered }), period: "2025-07-01..2026-06-30" })).toBe(
    "Against 1 Jul 2025 to 30 Jun 2026: 0.6 mL less (95 % interval −2.3 mL to +2.0 mL): not settled by this many.",
  );
  const none = rateFigure({ numerator: 0, denominator: 0, notMet: 0 });
  expect(words(rateFigure({}), ofQuarter(none))).toMatch(/nothing to compare/);
});

test("what is not 0 is never shown as 0, and 0 has no direction", () => {
  // Expected words: by hand.
  const rate = { kind: "rate", unit: "" } as const;
  const volume = { kind: "median", unit: "mL" } as const;
  expect(moreOrLess(rate, 0.00003)).toBe("0.003 percentage points more");
  expect(moreOrLess(rate, -0.0042)).toBe("0.42 percentage points less");
  expect(moreOrLess(volume, -0.02)).toBe("0.02 mL less");
  expect(moreOrLess({ kind: "median", unit: "s" }, 65)).toBe("1 min 5 s more");
  expect(moreOrLess(volume, 0)).toBe("the same");
  expect(rangeMoreOrLess(rate, { lower: -0.012, upper: 0.074 })).toBe(
    "1.2 less to 7.4 percentage points more",
  );
  expect(rangeMoreOrLess(volume, { lower: -3.2, upper: -0.6 })).toBe("0.6 mL to 3.2 mL less");
  expect(rangeMoreOrLess(volume, { lower: 0, upper: 3.2 })).toBe("nothing to 3.2 mL more");
});
