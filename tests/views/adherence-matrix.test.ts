import { describe, expect, test } from "vitest";
import type { Figure } from "@/lib/audit/figure";
import { standardLevels } from "@/lib/audit/flag-levels";
import { flaggedOf } from "@/lib/audit/flagged";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { quarter } from "@/lib/records/period";
import { adherenceMatrix } from "@/lib/views/adherence-matrix";
import { cellAddress } from "@/lib/views/cell-address";
import { columnBlocks } from "@/lib/views/column-blocks";
import { clinician, rateFigure } from "./made-figure";

// Shares are worked by hand from the counts beside them; the target and floor are those of lib/protocol/defaults, and the
// flag is computed (with R 4.2.2, 2 * pbinom(61, 100, 260 / 300)): so far under the pooled rate that no allowance reaches it.
const criteria = defaults.filter(({ id }) =>
  ["isolation", "timer-reset", "line-rinse"].includes(id),
);

function matrix(figures: readonly Figure[]) {
  return adherenceMatrix({
    period: quarter(2026, 3),
    whole: "All practices",
    criteria,
    figures,
    flags: flaggedOf(figures, standardLevels),
    filters: { period: "2026-Q3", practice: undefined },
  });
}

const timer = (code: string | null, met: number, of: number, notRecorded = 0) =>
  rateFigure({
    measure: "criterion/timer-reset",
    subject: code ? clinician(code) : { kind: "group" },
    population: of,
    numerator: met,
    denominator: of,
    notRecorded,
    notMet: of - met - notRecorded,
  });

describe("The matrix", () => {
  const figures = [
    timer(null, 260, 300, 10),
    timer("C10", 99, 100, 1),
    timer("C02", 61, 100),
    timer("C01", 100, 100),
    timer("C03", 0, 0),
    timer("C04", 10, 100, 80),
    rateFigure({
      measure: "criterion/line-rinse",
      subject: { kind: "chair", code: "2", practice: "P1" },
      numerator: 9,
      denominator: 10,
      notMet: 1,
    }),
  ];
  const [byClinician, byChair] = matrix(figures).parts;
  const row = byClinician?.blocks[0]?.rows.find(
    ({ measure }) => measure === "criterion/timer-reset",
  );
  const columns = byClinician?.blocks[0]?.columns ?? [];
  const placeOf = (id: string) => columns.findIndex((one) => one.id === `P1/${id}`);
  const cell = (id: string) => row?.cells[placeOf(id)];
  const leadsTo = (id: string) =>
    cellAddress(row ?? { href: "" }, columns[placeOf(id)] ?? { asks: "" }, cell(id) ?? {});

  test("has criteria in page order, clinicians in that of their codes, and the whole beside its target", () => {
    expect(byClinician?.blocks[0]?.rows.map(({ title }) => title)).toEqual([
      "Isolation by rubber dam",
      "Timer reset for the canal",
    ]);
    expect(byClinician?.blocks[0]?.columns.map(({ name }) => name)).toEqual([
      "C01, P1",
      "C02, P1",
      "C03, P1",
      "C04, P1",
      "C10, P1",
    ]);
    expect([row?.target, row?.whole?.rate, row?.whole?.counts]).toEqual([
      "target 95 %",
      "86.7 %",
      "260 of 300",
    ]);
  });

  test("says in words and by shape whether the target was reached, of no person, or why that cannot be said", () => {
    expect(row?.whole?.state).toEqual({ mark: "missed", words: "not reached" });
    expect([cell("C01")?.state, cell("C02")?.state]).toEqual([undefined, undefined]);
    // Under the completeness floor of 80 %: 20 of 100 are recorded.
    expect(cell("C04")?.state).toEqual({ mark: "missing", words: "not assessable" });
    expect(cell("C03")).toBeNull();
    // No figure at all: nobody's dam was looked at.
    expect(byClinician?.blocks[0]?.rows[0]?.whole).toBeNull();
  });

  test("leads to what was not met, else to what was not recorded, else to all", () => {
    const at = "/lead/measures/criterion/timer-reset?period=2026-Q3&span=quarter&clinician=P1%2F";
    expect(leadsTo("C02")).toBe(`${at}C02&outcome=not-met#records`);
    expect(leadsTo("C10")).toBe(`${at}C10&outcome=not-recorded#records`);
    expect(leadsTo("C01")).toBe(`${at}C01#records`);
  });

  test("marks who stands out beyond chance", () => {
    expect(cell("C02")?.flag).toBe("look first");
    expect(cell("C04")?.flag).toBeUndefined();
  });

  test("has what staff and equipment do together by chair", () => {
    expect(byChair?.blocks[0]?.columns.map(({ name }) => name)).toEqual(["2, P1"]);
    expect(byChair?.blocks[0]?.rows.map(({ title }) => title)).toEqual(["Irrigation line rinsed"]);
    const [rinse, chair] = [byChair?.blocks[0]?.rows[0], byChair?.blocks[0]?.columns[0]];
    expect(rinse && chair && cellAddress(rinse, chair, rinse.cells[0] ?? {})).toBe(
      "/lead/measures/criterion/line-rinse?period=2026-Q3&span=quarter&practice=P1&chair=2&outcome=not-met#records",
    );
  });
});

test("a criterion whose practices have different targets is held against none", () => {
  const differ = { ...timer(null, 90, 100) };
  delete differ.target;
  delete differ.inTheseRecords;
  const row = matrix([differ]).parts[0]?.blocks[0]?.rows[1];
  expect(row?.target).toBe("targets differ");
  expect(row?.whole?.state).toEqual({ mark: "open", words: "no one target" });
});

test("columns go into blocks that fit a sheet, about as many in each, and none is lost", () => {
  const sizes = (columns: number) => columnBlocks(columns).map(({ from, until }) => until - from);
  expect([0, 1, 8, 9, 23].map(sizes)).toEqual([[0], [1], [8], [5, 4], [8, 7, 8]]);
});
