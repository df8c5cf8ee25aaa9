import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { compositeOf } from "@/lib/audit/composite";
import { nothingMasked } from "@/lib/audit/disclosure/report-masks";
import type { RateFigure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import type { Subject } from "@/lib/measures/tally";
import { quarter } from "@/lib/records/period";
import { adherenceCsv } from "@/lib/views/adherence-csv";
import { adherenceReportOf } from "@/lib/views/adherence-report";
import { measured } from "./measured";

// Expected values: the project's own rule, that what is masked is said and nothing else of it is; counts made up.
const of = quarter(2026, 3);
const clusters = { clusters: 4, events: 15, units: 148 };
const sums = { eventsSquared: 60, eventsByUnits: 560, unitsSquared: 5500 };

function rate(subject: Subject, met: number): RateFigure {
  const figure = figureOf({
    kind: "rate",
    ...measured("criterion/isolation"),
    subject,
    period: of,
    population: 178,
    excluded: { abandoned: 20, "not-applicable": 3 },
    excepted: { "not-possible": 7 },
    notRecorded: 0,
    numerator: met,
    denominator: 148,
    notMet: 148 - met,
    clusters: null,
  });
  if (figure.kind !== "rate") throw new Error("not a rate");
  return figure;
}

const practice: Subject = { kind: "practice", code: "ELM" };
const parts = {
  period: of,
  practices: ["ELM", "OAK"],
  wholeGroup: true,
  figures: [rate({ kind: "group" }, 81), rate(practice, 15)],
  changes: [],
  composites: [
    compositeOf({
      subject: practice,
      period: of,
      opportunities: { met: 15, of: 148, notRecorded: 0 },
      visits: { met: 1, of: 4, notRecorded: 0 },
      clusters: { ...clusters, ...sums },
      byCriterion: [{ criterion: "isolation", met: 15, of: 148, notRecorded: 0 }],
    }),
  ],
  people: [{ practice: "ELM", visits: 9, patients: 8, clinicians: 6 }],
  published: null,
  version: "0.1.0",
};

test("a masked line says so in each cell that could tell something, never 0 and never empty", () => {
  const masks = { ...nothingMasked, line: ({ kind }: Subject) => kind === "practice" };
  const view = adherenceReportOf({ ...parts, masks });
  const found: Record<string, string>[] = parse(adherenceCsv(view, ""), {
    bom: true,
    columns: true,
  });
  const [whole, line] = found;
  expect(Number(whole?.met)).toBe(81);
  for (const column of [
    ...["population", "left_out", "eligible", "excepted", "met", "not_met", "not_recorded"],
    ...["counted", "rate", "interval_lower", "interval_upper", "in_these_records", "change"],
  ])
    expect(line?.[column], column).toBe("masked");
  expect(line?.says).toMatch(/^masked: fewer than 5 patients/);
  // Of the practice's 15 of 148 and of how many were left out nothing is in any format.
  const [, masked] = view.criteria[0]?.lines ?? [];
  expect(JSON.stringify({ ...masked, figure: { ...masked?.figure, criterion: null } })).not.toMatch(
    /\b(15|148|178|155|23|7)\b/,
  );
  expect(masked?.words.met).toBe("masked");
});

test("a masked score and masked people say so too, and no score repeats its criteria", () => {
  const masks = { ...nothingMasked, score: () => true, people: () => true };
  const view = adherenceReportOf({ ...parts, masks });
  const found: Record<string, string>[] = parse(adherenceCsv(view, ""), {
    bom: true,
    columns: true,
  });
  const some = found.filter(({ row }) => row === "overall" || row === "people");
  expect(some.map((row) => [row.unit, row.met || row.population, row.counted])).toEqual([
    ["opportunity", "masked", "masked"],
    ["visit", "masked", "masked"],
    ["patient", "masked", ""],
    ["clinician", "masked", ""],
  ]);
  for (const { says } of some) expect(says).toMatch(/^masked: fewer than 5/);
  expect(view.people).toMatchObject([{ visits: null, patients: null, clinicians: null }]);
  expect(view.overall.rows[0]?.opportunities.counts).toBe("masked");
  const open = adherenceReportOf({ ...parts, masks: nothingMasked });
  expect(open.composites[0]?.opportunities?.met).toBe(15);
  expect(JSON.stringify(open.composites)).not.toContain("byCriterion");
});
