import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { differenceOf } from "@/lib/audit/difference";
import { nothingMasked } from "@/lib/audit/disclosure/report-masks";
import type { RateFigure } from "@/lib/audit/figure";
import { figureOf } from "@/lib/audit/figure-of";
import type { ClusterCounts, Subject } from "@/lib/measures/tally";
import { period } from "@/lib/records/period";
import { adherenceColumns } from "@/lib/views/adherence-columns";
import { adherenceCsv } from "@/lib/views/adherence-csv";
import { adherenceReportOf } from "@/lib/views/adherence-report";
import { cautions } from "@/lib/views/cautions";
import { measured } from "./measured";

const quarter = period("2026-Q3");
if (!quarter) throw new Error("no such quarter");
const of = quarter;

/** 81 of 263 and 15 of 148: the pairs of Newcombe 1998, Stat Med 17:857, table I, whose Wilson intervals are published. */
const figures: RateFigure[] = [
  rate({ kind: "group" }, 81, 263, 12),
  rate({ kind: "practice", code: "=SUM(A1)" }, 15, 148, 0),
];

function rate(
  subject: Subject,
  met: number,
  counted: number,
  notRecorded: number,
  clusters: ClusterCounts | null = null,
): RateFigure {
  const figure = figureOf({
    kind: "rate",
    ...measured("criterion/isolation"),
    subject,
    period: of,
    population: counted + 30,
    excluded: { abandoned: 20, "not-applicable": 3 },
    excepted: { "not-possible": 7 },
    notRecorded,
    numerator: met,
    denominator: counted,
    notMet: counted - met - notRecorded,
    clusters,
  });
  if (figure.kind !== "rate") throw new Error("not a rate");
  return figure;
}

const parts = {
  period: of,
  practices: ["=SUM(A1)", "ELM"],
  wholeGroup: true,
  figures,
  changes: [],
  composites: [],
  masks: nothingMasked,
  people: [
    { practice: "ELM", visits: 3, patients: 3, clinicians: 6 },
    { practice: "OAK", visits: 9, patients: 0, clinicians: 5 },
  ],
  published: new Date("2026-10-02T08:30:00Z"),
  version: "0.1.0",
};
const report = adherenceReportOf(parts);
const fingerprint = "f".repeat(64);
const text = adherenceCsv(report, fingerprint);
const rows: Record<string, string>[] = parse(text, { bom: true, columns: true });
const figureRows = rows.filter((row) => row.row === "figure");

test("it is RFC 4180 with a byte order mark, CRLF and the same number of fields in every record", () => {
  expect(Buffer.from(text).subarray(0, 3)).toEqual(Buffer.from([0xef, 0xbb, 0xbf]));
  expect(text.endsWith("\r\n")).toBe(true);
  expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  // csv-parse refuses a record of another length than the header's.
  const records: string[][] = parse(text, { bom: true });
  expect(records[0]).toEqual([...adherenceColumns]);
});

test("its numbers are those of the figures, to the last digit", () => {
  expect(figureRows).toHaveLength(figures.length);
  for (const [place, figure] of figures.entries()) {
    const row = figureRows[place];
    expect(Number(row?.met)).toBe(figure.numerator);
    expect(Number(row?.counted)).toBe(figure.denominator);
    expect(Number(row?.eligible)).toBe(figure.denominator + 7);
    expect(Number(row?.population)).toBe(figure.population);
    expect(Number(row?.not_met)).toBe(figure.notMet);
    expect(Number(row?.rate)).toBe(figure.estimate);
    expect(Number(row?.interval_lower)).toBe(figure.interval?.lower);
    expect(Number(row?.interval_upper)).toBe(figure.interval?.upper);
    expect(Number(row?.rate_if_unrecorded_met)).toBe(figure.bounds?.[1]);
    expect(row?.left_out_by_reason).toBe("abandoned 20; not-applicable 3");
    expect(row?.excepted_by_reason).toBe("not-possible 7");
  }
});

test("its intervals are the published ones", () => {
  // Newcombe 1998, Stat Med 17:857, table I, Wilson: 81/263 .2553–.3662; 15/148 .0624–.1605.
  const ends = figureRows.map((row) => [
    Number(row.interval_lower).toFixed(4),
    Number(row.interval_upper).toFixed(4),
  ]);
  expect(ends).toEqual([
    ["0.2553", "0.3662"],
    ["0.0624", "0.1605"],
  ]);
  expect(figureRows[0]).toMatchObject({
    interval_level: "0.95",
    interval_method: "wilson",
    target: "1",
  });
});

test("the clustered interval, its design effect and the change stand in the last columns", () => {
  // 10 of 30 patients with one of two visits met: by hand p = 1/6, v = 30/29·(10·(1 − 1/3)² + 20·(1/3)²)/60²,
  // design effect v ÷ (p(1 − p)/60) = .8276.
  const clusters = {
    clusters: 30,
    events: 10,
    units: 60,
    eventsSquared: 10,
    eventsByUnits: 20,
    unitsSquared: 120,
  };
  const now = rate({ kind: "group" }, 10, 60, 0, clusters);
  const before = { ...rate({ kind: "group" }, 10, 60, 0, clusters), period: "2026-Q2" };
  const changes = [{ now, before, difference: differenceOf(now, before) }];
  const of = adherenceReportOf({ ...parts, figures: [now, ...figures], changes });
  const found: Record<string, string>[] = parse(adherenceCsv(of, fingerprint), {
    bom: true,
    columns: true,
  });
  const [row, without] = found;
  expect(Number(row?.clustered_lower)).toBe(now.clustered?.lower);
  expect(Number(row?.clustered_upper)).toBe(now.clustered?.upper);
  expect(row?.clustered_method).toBe("clustered-wilson");
  expect(Number(row?.design_effect)).toBeCloseTo(0.8276, 4);
  expect(row?.interval_to_read).toMatch(/^Read .* which allows for visits of one patient/);
  expect(row?.change).toMatch(/^Against April to June 2026: the same \(95 % interval −/);
  // Without patients the columns are empty, not 0.
  for (const column of ["clustered_lower", "clustered_upper", "design_effect", "change"])
    expect(without?.[column]).toBe("");
  const about = found.filter((one) => one.row === "about").map((one) => one.title);
  expect(about).toEqual(expect.arrayContaining(["design_effect", "interval_to_read", "change"]));
});

test("text that a spreadsheet would run is defused, numbers are not touched", () => {
  expect(figureRows[1]?.practice).toBe("'=SUM(A1)");
  for (const start of ["+1", "-1", "@x", "\tx", "\rx"]) {
    const [figure] = figures;
    if (!figure) throw new Error("no figure");
    const odd = { ...report, scope: start };
    const found: Record<string, string>[] = parse(adherenceCsv(odd, fingerprint), {
      bom: true,
      columns: true,
    });
    expect(found.find((row) => row.title === "scope")?.says).toBe(`'${start}`);
  }
  // No figure of a rate is negative; a number would stand as it is all the same.
  const criteria = report.criteria.map((one) => ({
    ...one,
    criterion: { ...one.criterion, target: -0.5 },
  }));
  const negative = adherenceCsv({ ...report, criteria }, fingerprint);
  const found: Record<string, string>[] = parse(negative, { bom: true, columns: true });
  expect(found[0]?.target).toBe("-0.5");
});

test("counts of people under five are masked and said to be; nobody is 0", () => {
  const people = rows
    .filter((row) => row.row === "people")
    .map((row) => [row.practice, row.unit, row.population, row.says]);
  expect(people).toEqual([
    [
      "ELM",
      "patient",
      "masked",
      "masked: fewer than 5, here or in what could be worked out from it",
    ],
    ["ELM", "clinician", "6", ""],
    ["OAK", "patient", "0", ""],
    ["OAK", "clinician", "5", ""],
  ]);
});

test("cautions, cut-off, scope and software go with it", () => {
  expect(rows.filter((row) => row.row === "caution").map((row) => row.says)).toEqual(cautions);
  const about = Object.fromEntries(
    rows.filter((row) => row.row === "about").map((row) => [row.title, row.says]),
  );
  expect(about).toMatchObject({
    period: "July to September 2026",
    "data cut-off (when the last import was published)": "2026-10-02T08:30:00.000Z",
    software: "Canal Audit 0.1.0",
    [Object.keys(about).find((title) => title.startsWith("fingerprint")) ?? ""]: fingerprint,
  });
  expect(about.scope).toContain("the whole group");
});

test("where there is nothing to estimate the rate is empty and the reason is written", () => {
  const none = adherenceReportOf({
    period: of,
    practices: ["ELM"],
    wholeGroup: false,
    changes: [],
    composites: [],
    people: [],
    masks: nothingMasked,
    published: null,
    version: "0.1.0",
    figures: [empty()],
  });
  const [row]: Record<string, string>[] = parse(adherenceCsv(none, fingerprint), {
    bom: true,
    columns: true,
  });
  expect(row).toMatchObject({
    rate: "",
    interval_lower: "",
    counted: "0",
    why_no_rate: "No units in this period.",
  });
});

function empty(): RateFigure {
  const figure = figureOf({
    kind: "rate",
    ...measured("criterion/isolation"),
    subject: { kind: "practice", code: "ELM" },
    period: of,
    population: 0,
    excluded: {},
    excepted: {},
    notRecorded: 0,
    numerator: 0,
    denominator: 0,
    notMet: 0,
    clusters: null,
  });
  if (figure.kind !== "rate") throw new Error("not a rate");
  return figure;
}
