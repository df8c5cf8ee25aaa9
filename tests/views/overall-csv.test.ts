import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { compositeOf } from "@/lib/audit/composite";
import { nothingMasked } from "@/lib/audit/disclosure/report-masks";
import type { OpportunityTally } from "@/lib/measures/opportunities";
import { quarter } from "@/lib/records/period";
import { adherenceCsv } from "@/lib/views/adherence-csv";
import { adherenceReportOf } from "@/lib/views/adherence-report";

/** Visits with 2 of 2, 1 of 2, 0 of 1 and 3 of 3 opportunities met; one of the two others was not recorded. */
const opportunities: OpportunityTally = {
  subject: { kind: "group" },
  period: quarter(2026, 3),
  opportunities: { met: 6, of: 8, notRecorded: 1 },
  visits: { met: 2, of: 4, notRecorded: 1 },
  clusters: {
    clusters: 4,
    events: 6,
    units: 8,
    eventsSquared: 14,
    eventsByUnits: 15,
    unitsSquared: 18,
  },
  byCriterion: [],
};

test("both overall scores stand with their counts and say that they are no verdict", () => {
  const report = adherenceReportOf({
    period: quarter(2026, 3),
    practices: ["ELM", "OAK"],
    wholeGroup: true,
    figures: [],
    changes: [],
    composites: [compositeOf(opportunities)],
    people: [],
    masks: nothingMasked,
    published: null,
    version: "0.1.0",
  });
  const rows: Record<string, string>[] = parse(adherenceCsv(report, ""), {
    bom: true,
    columns: true,
  });
  const overall = rows.filter((row) => row.row === "overall");
  expect(
    overall.map((row) => [row.unit, row.met, row.not_met, row.not_recorded, row.counted, row.rate]),
  ).toEqual([
    ["opportunity", "6", "1", "1", "8", "0.75"],
    ["visit", "2", "1", "1", "4", "0.5"],
  ]);
  expect(overall.map((row) => row.interval_method)).toEqual(["clustered-wilson", "wilson"]);
  // Wilson 2/4: computed with SciPy 1.17.1, binomtest(2, 4).proportion_ci(method='wilson').
  expect(Number(overall[1]?.interval_lower)).toBeCloseTo(0.15, 3);
  expect(Number(overall[1]?.interval_upper)).toBeCloseTo(0.85, 3);
  for (const row of overall) expect(row.says).toContain("no verdict");
});
