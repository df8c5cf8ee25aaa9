import { expect, test } from "vitest";
import { comparisonWithOwn, noComparison } from "@/lib/audit/comparison";
import { ownComparison } from "@/lib/views/own-comparison";
import { ruleOfThree } from "@/lib/views/own-finding";
import { ownSeen } from "@/lib/views/own-seen";
import { ownSummary } from "@/lib/views/own-summary";
import { othersMedian, othersRate, rateOf } from "./made-comparison";
import { clinician, medianFigure, rateFigure } from "./made-figure";

// Rates: computed (in Python with SciPy: clustered Wilson intervals squared and added; binomial and beta tails).
const subject = clinician("C01");
const ends = (lower: number, upper: number) => ({ lower, upper, designEffect: 1, clusters: 9 });
const own = medianFigure({ subject, n: 40, clustered: ends(17, 20) });
const others = othersRate("separation-per-use", [
  [2, 1, 2],
  [98, 0, 2],
]);
const alike = rateOf(
  [
    [3, 2, 2],
    [27, 0, 2],
  ],
  { subject },
);
const few = rateOf(
  [
    [2, 1, 2],
    [28, 0, 2],
  ],
  { subject },
);

test("a difference that chance easily gives does not tell the two apart", () => {
  // 18.6 − 19.4; −.8 − √(1.6² + 1.1²), −.8 + √(1.4² + .9²): by hand.
  expect(ownComparison(own, othersMedian(19.4, ends(18.5, 20.5)))).toBe(
    "The practice's median without you is 19.4 mL (40 recorded canals); yours is 0.8 mL less, and the difference could be anything from 2.7 mL less to 0.9 mL more (95 % interval), so these records do not tell the two apart.",
  );
  // .0333 − .0100, −.0126 to .1091.
  expect(ownComparison(few, others)).toBe(
    "The practice's rate without you is 1.00 % (200 uses); yours is 2.3 percentage points more, and the difference could be anything from 1.3 less to 10.9 percentage points more (95 % interval), so these records do not tell the two apart.",
  );
});

test("one that chance does not easily give is worth a look, and no more is said", () => {
  // .1000 − .0100, .0177 to .2584.
  expect(ownComparison(alike, others)).toBe(
    "The practice's rate without you is 1.00 % (200 uses); yours is 9.0 percentage points more, and the difference could be anything from 1.8 to 25.8 percentage points more (95 % interval), which lies outside what chance alone easily gives: worth a look at records, cases and equipment before anything else.",
  );
});

test("where no interval can be had it says why", () => {
  const comparison = othersMedian(19.4, ends(18.5, 20.5));
  expect(ownComparison({ ...own, clustered: null }, comparison)).toMatch(
    /; too few patients stand behind one of the two/,
  );
  expect(ownComparison(own, othersMedian(19.4, null))).toMatch(/; too few patients/);
  expect(ownComparison({ ...own, n: 9 }, comparison)).toMatch(/; with so few units of yours/);
  const still = medianFigure({ subject, n: 40, clustered: ends(18.6, 18.6) });
  expect(ownComparison(still, othersMedian(19.4, ends(19.4, 19.4)))).toMatch(/hardly vary/);
  expect(ownComparison(own, noComparison("Nobody else."))).toBe(
    "There is nothing to compare it with. Nobody else.",
  );
});

test("the clinician's own year before is compared in the same way", () => {
  const before = comparisonWithOwn(
    rateOf([
      [2, 1, 2],
      [98, 0, 2],
    ]),
  );
  expect(before && ownComparison(few, before)).toMatch(
    /^Too few others .* your own rate of the four quarters before is 1\.00 % \(200 uses\); yours is 2\.3 percentage points more, and .* do not tell the two apart\.$/,
  );
});

test("with it goes what could have been seen", () => {
  // 29 independent units (60 with design effect 2.069) against .01: .09976; 60 against .01: .06997.
  expect(ownSeen(alike, others)).toBe(
    "What could have been seen: a true rate of 9.98 % or more would have been told from the 1.00 % of the practice four times in five.",
  );
  expect(ownSeen(few, others)).toMatch(/a true rate of 7\.00 % or more/);
  // 34 independent units against .90, mirrored: .7135.
  const measure = "criterion/length-recorded";
  const met = rateOf(
    [
      [18, 2, 2],
      [4, 1, 2],
      [8, 0, 2],
    ],
    { measure, subject },
  );
  const theirs = othersRate(measure, [
    [85, 2, 2],
    [10, 1, 2],
    [5, 0, 2],
  ]);
  expect(ownSeen(met, theirs)).toBe(
    "What could have been seen: a true rate of 71.4 % or less would have been told from the 90.0 % of the practice four times in five.",
  );
  // Of 5 patients with none, even 5 in 5 against 90 % would not: 2-sided 5 %, upper mid-P .9⁵/2 = .295 (by hand).
  const five = rateOf([[5, 0, 2]], { subject });
  expect(
    ownSeen(
      five,
      othersRate("separation-per-use", [
        [90, 1, 1],
        [10, 0, 1],
      ]),
    ),
  ).toMatch(/no higher true rate would have been told/);
  expect(ownSeen(own, othersMedian(19, null))).toBeNull();
  expect(ownSeen(few, othersRate("separation-per-use", [[90, 0, 1]]))).toBeNull();
  expect(ownSeen(rateFigure({ subject }), others)).toBeNull();
});

test("none seen is told by the rule of three for unrelated and for wholly alike units", () => {
  // Hanley & Lippman-Hand 1983, JAMA 249:1743: 3 in n.
  expect(ruleOfThree(rateOf([[30, 0, 2]]))).toBe(
    "Rule of three: none in 60 uses speaks against a rate above about 3 in 60 if uses of one patient are unrelated, but only against one above about 3 in 30, the number of your patients, if they are wholly alike; and against no lower one.",
  );
  expect(ruleOfThree(rateOf([[30, 0, 1]]))).toMatch(/above about 3 in 30, and against no lower/);
});

test("the summary rests on settled differences, and says what chance alone does to so many", () => {
  const summary = ownSummary(
    [
      { figure: own, comparison: othersMedian(19.4, ends(18.5, 20.5)) },
      { figure: few, comparison: others },
      { figure: alike, comparison: others },
      { figure: { ...own, clustered: null }, comparison: othersMedian(30, ends(29, 31)) },
    ],
    own.period,
  );
  expect(summary.map(({ id, look }) => [id, look])).toEqual([
    ["difference separation-per-use", true],
    ["chance", false],
  ]);
  expect(summary[0]?.words).toBe(
    "yours 10.0 % (60 uses), practice without you 1.00 % (200): 9.0 percentage points more, 95 % interval 1.8 to 25.8 percentage points more, outside what chance alone easily gives",
  );
  // 0.05 × 3, by hand.
  expect(summary[1]?.words).toBe(
    "3 differences were judged: 1 outside what chance alone easily gives. Where nobody differs chance alone would set about 0.15 of 3 outside; this page makes no adjustment for how many there are. Too few patients stand behind another 1 to judge",
  );
});

test("a line of four quarters says so, and the judged are told apart by it", () => {
  const wide = { ...alike, period: "2025-10-01..2026-09-30" };
  const summary = ownSummary(
    [
      { figure: own, comparison: othersMedian(19.4, ends(18.5, 20.5)) },
      { figure: wide, comparison: others },
    ],
    own.period,
  );
  expect(summary[0]?.title).toMatch(/, over four quarters$/);
  expect(summary[1]?.words).toMatch(
    /^2 differences were judged, 1 of this quarter and 1 over four: 1 outside/,
  );
});

test("nothing judged is said as that", () => {
  const unjudged = { figure: { ...own, clustered: null }, comparison: othersMedian(30, null) };
  expect(ownSummary([unjudged], own.period)[0]?.words).toMatch(
    /^none could be judged, as too few patients/,
  );
  expect(ownSummary([{ figure: own, comparison: noComparison("") }], own.period)).toEqual([]);
});
