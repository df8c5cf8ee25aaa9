import { expect, test } from "vitest";
import { type CompositeFigure, compositeOf } from "@/lib/audit/composite";
import type { Subject } from "@/lib/measures/tally";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { quarter } from "@/lib/records/period";
import { compositeLines, compositeParts, compositeView } from "@/lib/views/composite";
import { clinician } from "./made-figure";

/** Visits of one opportunity each, which are clusters of one unit. */
function figure(subject: Subject, met: number, of: number, notRecorded = 0): CompositeFigure {
  const counts = { met, of, notRecorded };
  return compositeOf({
    subject,
    period: quarter(2026, 3),
    opportunities: counts,
    visits: counts,
    clusters: {
      clusters: of,
      events: met,
      units: of,
      eventsSquared: met,
      eventsByUnits: met,
      unitsSquared: of,
    },
    byCriterion: [{ criterion: "isolation", ...counts }],
  });
}

test("a score stands with its interval and counts, and not recorded apart from not met", () => {
  const [row] = compositeView([figure({ kind: "group" }, 12, 20, 3)], defaults).rows;
  // Wilson 12/20: computed with SciPy 1.17.1, binomtest(12, 20).proportion_ci(method='wilson').
  expect(row?.visits).toEqual({
    estimate: "60.0 %",
    missing: false,
    interval: "38.7 % to 78.1 %",
    counts: "12 of 20 visits",
    notMet: "5 not met, 3 not recorded",
  });
  expect(row?.opportunities.counts).toBe("12 of 20 opportunities");
});

test("with few visits it says so and gives no share", () => {
  const [row] = compositeView([figure(clinician("C01"), 8, 9)], defaults).rows;
  expect(row?.opportunities).toMatchObject({
    estimate: "too few to tell",
    missing: true,
    interval: "",
    counts: "8 of 9 opportunities",
  });
});

test("it says which criteria are left out, of everybody and of clinicians", () => {
  const words = (subject: Subject) =>
    compositeView([figure(subject, 12, 20)], defaults).about.join(" ");
  // Of the 23 default criteria two are of a chair's day and one is of the record.
  expect(words({ kind: "group" })).toContain(
    "20 of the 23 criteria in force count; left out: Irrigation line rinsed, Irrigation line dried (of a chair's day and of no visit), Record complete (about the record itself).",
  );
  expect(words({ kind: "group" })).not.toContain("staff and equipment");
  expect(words(clinician("C01"))).toContain(
    "without what staff and equipment do together (Irrigation line checked, Torque calibrated, Handpiece cared for)",
  );
});

test("a line of text has both scores by name, and intervals by visit", () => {
  expect(compositeLines(figure({ kind: "practice", code: "OAK" }, 12, 20, 3))).toEqual([
    expect.stringMatching(
      /^Opportunities met, practice OAK, 2026-Q3: 60.0 %, 95 % interval .* \(Wilson, by visit\) \(12 of 20 opportunities; 5 not met, 3 not recorded\)$/,
    ),
    "Visits with everything met, practice OAK, 2026-Q3: 60.0 %, 95 % interval 38.7 % to 78.1 % (Wilson) (12 of 20 visits; 5 not met, 3 not recorded)",
  ]);
});

test("what it is made of stands by criterion", () => {
  expect(compositeParts(figure(clinician("C01"), 12, 20, 3), defaults)).toEqual([
    {
      id: "isolation",
      title: "Isolation by rubber dam",
      counts: "12 of 20",
      share: "60.0 %",
      notRecorded: "3",
    },
  ]);
});
