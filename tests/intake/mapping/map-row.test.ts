import { expect, test } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import { fits } from "@/lib/intake/mapping/fits";
import { rowMapper } from "@/lib/intake/mapping/map-row";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import type { RawRow } from "@/lib/intake/raw-row";
import type { GoodRow, HeldRow } from "@/lib/intake/sheet";
import { context, outcome } from "../read-text";

// Expected values are worked by hand from each mapping and row.

const finding = {
  "visit.chair": { columns: ["Chair"] },
  "visit.at": { columns: ["When"], clock: { day: "day-month-year" } },
  canal: { columns: ["canal"] },
  seq: { numbered: true },
  irrigant: { columns: ["agent"], words: [{ word: "bleach", means: "naocl" }] },
  delivery: { always: "syringe" },
};
const right = { chair: "N-2", when: "03.07.2026 09:20", canal: "MB1", agent: "Bleach" };

test("a row without a visit's number bears what finds its visit, in UTC, and is numbered by its time of day", () => {
  const rows = mapped(mappingOf(finding, { minutes: 5 }), right, { ...right, canal: "MB2" });
  const match = { chair: "N-2", at: "2026-07-03T08:20:00.000Z", minutes: 5 };
  expect(rows).toMatchObject([
    { verdict: "good", match, values: { canal: "MB1", seq: 92_000, irrigant: "naocl" } },
    { verdict: "good", match, values: { canal: "MB2", seq: 92_000 } },
  ]);
});

test("two rows of one canal at the same time have different numbers, whatever their teeth", () => {
  const fields = {
    ...finding,
    "visit.tooth": { columns: ["note"] },
    "visit.tooth_notation": { always: "palmer" },
  };
  const rows = mapped(
    mappingOf(fields),
    { ...right, note: "UR6" },
    right,
    { ...right, when: "03.07.2026 09:20:01" },
    { ...right, when: "04.07.2026 09:20" },
    { ...right, chair: "N-3" },
  );
  const numbers = rows.map((row) => row && "values" in row && row.values.seq);
  expect(numbers).toEqual([92_000, 92_001, 92_002, 92_000, 92_000]);
  expect(rows[0]).toMatchObject({ match: { tooth: "16" } });
});

test("rows that name their visit are numbered as they come, within visit and canal", () => {
  const fields = { ...finding, session_id: { columns: ["note"] } };
  const rows = mapped(
    mappingOf(fields),
    ...["V-1", "V-2", "V-1"].map((note) => ({ ...right, note })),
    { ...right, note: "V-1", canal: "MB2" },
  );
  expect(rows.map((row) => row && "values" in row && row.values.seq)).toEqual([1, 1, 2, 1]);
});

test("a moment in another order is told as the mapping reads it, once", () => {
  const [row] = mapped(mappingOf(finding), { ...right, when: "2026-07-03 09:20" });
  expect(outcome(row)).toBe(
    'pump.csv, line 2, session_id: found "2026-07-03 09:20"; the mapping reads 03.07.2026 (day first) with the time of day as 09:10 here.',
  );
});

test("a row without a time is held, as nothing finds its visit", () => {
  const [row] = mapped(mappingOf(finding), { ...right, when: "" });
  expect(outcome(row)).toContain(
    "the row names neither its visit nor a time by which it could be found",
  );
});

test("what the reader found wrong counts where a field takes the column, and nowhere else", () => {
  const trouble = { found: "something nested", remedy: "write one text" };
  const rows = made(mappingOf(finding), [
    { line: 2, cells: right, troubles: [{ column: "note", ...trouble }] },
    { line: 3, cells: right, troubles: [{ column: "agent", ...trouble }] },
  ]);
  expect(rows).toMatchObject([
    { verdict: "good" },
    { verdict: "held", reasons: [{ column: "irrigant" }] },
  ]);
});

test("a row feeds a table only where the conditions hold, and a required word that is not recorded makes no row", () => {
  const words = [
    { word: "bleach", means: "naocl" },
    { word: "?", means: null },
  ];
  const fields = { ...finding, irrigant: { columns: ["agent"], words } };
  const rows = mapped(
    mappingOf(fields, { only: [{ column: "note", not: ["", "test run"] }] }),
    { ...right, note: " TEST  run" },
    right,
    { ...right, note: "patient", agent: "?" },
    { ...right, note: "patient" },
  );
  expect(rows.map((row) => row?.verdict)).toEqual([undefined, undefined, undefined, "good"]);
});

test("JSON rows may leave out what is not recorded; other files have all columns that are read", () => {
  const fields = { ...finding, volume_ml: { columns: ["amount"] } };
  const header = ["chair", "when", "canal", "agent"];
  expect(fits(mappingOf(fields, {}, { kind: "json-lines" }), header)).toBe("has all");
  expect(fits(mappingOf(fields), header)).toBeUndefined();
  expect(fits(mappingOf(fields, {}, { kind: "json-lines" }), ["chair", "canal"])).toBeUndefined();
});

function mappingOf(fields: object, more: object = {}, file: object = {}): Mapping {
  return mappingSchema.parse({
    format: "canal-audit-mapping-1",
    name: "Pump",
    file: { kind: "separated", ...file },
    columns: ["chair", "when", "canal", "agent", "note", "for"],
    tables: [{ table: "irrigation", fields, ...more }],
  });
}

function mapped(mapping: Mapping, ...rows: Record<string, string>[]) {
  return made(
    mapping,
    rows.map((cells, place) => ({ line: place + 2, cells })),
  );
}

/** What becomes of each row; undefined where it feeds none. */
function made(mapping: Mapping, rows: RawRow[]): (GoodRow | HeldRow | undefined)[] {
  const [feed] = mapping.tables;
  if (!feed) throw new Error("no table");
  const map = rowMapper(mapping, feed, ["chair", "when", "canal", "agent", "note"], context);
  return rows.map((row) => {
    const one = map(row);
    const place = { file: "pump.csv", line: row.line };
    return one && checkRow(feed.table, one.cells, place, context, one.troubles, one.match);
  });
}
