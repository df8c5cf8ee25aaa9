import { expect, test } from "vitest";
import type { Figure } from "@/lib/audit/figure";
import type { Subject } from "@/lib/measures/tally";
import { lookLines } from "@/lib/views/lead-look";
import { rateFigure } from "./made-figure";

// Wilson limits in the words: computed with SciPy 1.17.1, binomtest(x, n).proportion_ci(method='wilson').
const p1: Subject = { kind: "practice", code: "P1" };
const at = (criteria: readonly Figure[], more: { gaps?: string[]; disagreeing?: number } = {}) =>
  lookLines({
    criteria,
    completeness: [],
    gaps: more.gaps ?? [],
    disagreeing: more.disagreeing ?? 0,
    filters: { period: "2026-Q3", practice: undefined },
  });

test("a criterion missed beyond chance is said, with where its records are", () => {
  // Wilson 800/1000: 0.7741 to 0.8236.
  const [line] = at([
    rateFigure({
      measure: "criterion/timer-reset",
      subject: p1,
      numerator: 800,
      denominator: 1000,
      notMet: 200,
    }),
  ]);
  expect(line?.words).toBe(
    "Timer reset for the canal, practice P1: 800 of 1\u202f000 canals, 80.0 %; the whole 95 % interval 77.4 % to 82.4 % (Wilson) lies under the target of 95 %, even were all that is not recorded met.",
  );
  expect(line?.href).toBe(
    "/lead/measures/criterion/timer-reset?period=2026-Q3&practice=P1&span=quarter&outcome=not-met#records",
  );
});

test("what is under its target but not settled, and what has reached it, is not said", () => {
  // Wilson 92/100: 0.8501 to 0.9589, which holds 0.95.
  expect(
    at([
      rateFigure({
        measure: "criterion/timer-reset",
        subject: p1,
        numerator: 92,
        denominator: 100,
        notMet: 8,
      }),
    ]),
  ).toEqual([]);
  expect(
    at([
      rateFigure({
        measure: "criterion/isolation",
        subject: p1,
        numerator: 100,
        denominator: 100,
        notMet: 0,
      }),
    ]),
  ).toEqual([]);
});

test("under its completeness floor a criterion cannot be assessed, and that is what is said", () => {
  const [line] = at([
    rateFigure({
      measure: "criterion/isolation",
      subject: p1,
      numerator: 50,
      denominator: 100,
      notMet: 0,
      notRecorded: 50,
    }),
  ]);
  expect(line?.words).toBe(
    "Isolation by rubber dam, practice P1, cannot be assessed: 50 of 100 visits are recorded, under the floor of 90 %.",
  );
});

test("of what should always be done every miss counts", () => {
  const [line] = at([
    rateFigure({
      measure: "criterion/isolation",
      subject: p1,
      numerator: 99,
      denominator: 100,
      notMet: 1,
    }),
  ]);
  expect(line?.words).toBe(
    "Isolation by rubber dam, practice P1: not done in 1 of 100 visits, where every one should be.",
  );
});

test("weeks without records and values that disagree are said", () => {
  const lines = at([], { gaps: ["P1-1 has no visit in this period."], disagreeing: 1 });
  expect(lines.map((line) => line.words)).toEqual([
    "P1-1 has no visit in this period. Closed, or records that have not come in: only the practice can tell.",
    "1 canal has a volume, flow and time that disagree by over a tenth.",
  ]);
});

test("what several practices have in common is one sentence, and what is missed goes before what cannot be assessed", () => {
  const of = (code: string, measure: string, met: number, notMet: number, notRecorded: number) =>
    rateFigure({
      measure: `criterion/${measure}`,
      subject: { kind: "practice", code },
      numerator: met,
      denominator: met + notMet + notRecorded,
      notMet,
      notRecorded,
    });
  const lines = at([
    of("P1", "isolation", 50, 0, 50),
    of("P2", "isolation", 10, 0, 10),
    of("P1", "timer-reset", 800, 200, 0),
    of("P2", "timer-reset", 80, 120, 0),
    of("P1", "no-hypochlorite-chlorhexidine-contact", 7, 1, 0),
    of("P2", "no-hypochlorite-chlorhexidine-contact", 9, 3, 0),
  ]);
  expect(lines.map(({ words }) => words)).toEqual([
    "Timer reset for the canal is under its target of 95 % beyond chance, even were all that is not recorded met: P1 800 of 1\u202f000 canals, 80.0 %; P2 80 of 200, 40.0 %.",
    "No hypochlorite next to chlorhexidine, not done where every one should be: P1 1 of 8 visits; P2 3 of 12.",
    "Isolation by rubber dam cannot be assessed, recorded are: P1 50 of 100 visits; P2 10 of 20, under the floor of 90 %.",
  ]);
  expect(lines.map(({ href }) => href)).toEqual([
    "/lead/measures/criterion/timer-reset?period=2026-Q3&span=quarter&outcome=not-met#records",
    "/lead/measures/criterion/no-hypochlorite-chlorhexidine-contact?period=2026-Q3&span=quarter&outcome=not-met#records",
    "/lead/measures/criterion/isolation?period=2026-Q3&span=quarter&outcome=not-recorded#records",
  ]);
});
