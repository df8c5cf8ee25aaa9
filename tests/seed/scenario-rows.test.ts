import { describe, expect, it } from "vitest";
import { canalName } from "@/lib/records/canal-name";
import { isDay } from "@/lib/records/period";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { type ToothNotation, toothByIso3950 } from "@/lib/records/tooth";
import { makePractice } from "@/seed/make-practice";
import type { Row } from "@/seed/rows";
import { practices, span } from "@/seed/scenario";

// Expected values are computed from the generated rows; ranges are common practice.

const made = practices.map((practice) => ({ practice, rows: makePractice(practice, span.last) }));
const all = (table: TableName) => made.flatMap(({ rows }) => rows[table]);

describe("the scenario's rows before they are spoilt", () => {
  it("are the same on every run", () => {
    for (const { practice, rows } of made) {
      expect(makePractice(practice, span.last)).toEqual(rows);
    }
  });

  it("of a shorter scenario are the beginning of the longer one's", () => {
    for (const { practice, rows } of made) {
      const shorter = makePractice(practice, "2025-06-30");
      expect(shorter.sessions.length).toBeGreaterThan(200);
      for (const table of ["sessions", "canals", "irrigation", "instruments", "upkeep"] as const) {
        expect(rows[table].slice(0, shorter[table].length)).toEqual(shorter[table]);
      }
    }
  });

  it("fill all ten tables", () => {
    for (const table of tableNames) expect(all(table).length, table).toBeGreaterThan(0);
    // What the scenario sets out to be: nine to ten thousand canals.
    expect(all("canals").length).toBeGreaterThanOrEqual(9000);
    expect(all("canals").length).toBeLessThanOrEqual(10_000);
  });

  it.each(tableNames)("fit the columns of %s", (table) => {
    for (const row of all(table)) expect(misfits(table, row), JSON.stringify(row)).toEqual([]);
  });

  it.each(tableNames)("have no key twice in %s", (table) => {
    const keys = tables[table].columns.filter(({ key }) => key).map(({ name }) => name);
    for (const { rows } of made) {
      const seen = rows[table].map((row) => keys.map((key) => row[key] ?? "").join(" "));
      expect(new Set(seen).size).toBe(seen.length);
    }
  });

  it("hang on visits that are there, and uses after a separation are none", () => {
    for (const { rows } of made) {
      const visits = new Map(rows.sessions.map((row, place) => [row.session_id, place]));
      for (const table of ["canals", "irrigation", "instruments", "steps", "followups"] as const) {
        for (const row of rows[table]) expect(visits.has(row.session_id)).toBe(true);
      }
      const parted = rows.instruments.filter((row) => row.separated === "yes" && row.instrument_id);
      for (const { instrument_id, session_id } of parted) {
        const later = rows.instruments.filter((row) => row.instrument_id === instrument_id);
        const last = Math.max(...later.map((row) => visits.get(row.session_id) ?? Infinity));
        expect(last).toBe(visits.get(session_id));
      }
    }
  });
});

/** What of a row the record format would not take, by lib/records alone. */
function misfits(table: TableName, row: Row): string[] {
  const { columns } = tables[table];
  const unknown = Object.keys(row).filter(
    (name) => !columns.some((column) => column.name === name),
  );
  const wrong = columns.filter((column) => {
    const cell = row[column.name];
    if (cell === undefined) return column.required === true;
    const text = String(cell);
    const number = typeof cell === "number" ? cell : Number(text);
    if (column.type === "choice") return !column.choices?.includes(text);
    if (column.type === "flag" || column.type === "count") return !["yes", "no"].includes(text);
    if (column.type === "canal") return canalName(text) === undefined;
    if (column.type === "tooth") {
      return toothByIso3950(text, String(row.tooth_notation) as ToothNotation) === undefined;
    }
    if (column.type === "day") return !isDay(text);
    if (column.type === "instant")
      return !isDay(text.slice(0, 10)) || !/T\d\d:\d\d:\d\d(Z|\+0\d:00)?$/.test(text);
    if (column.type === "whole" && !Number.isInteger(number)) return true;
    if (column.type !== "number" && column.type !== "whole") return false;
    const { least = -Infinity, most = Infinity, over = -Infinity } = column;
    return !(number >= least && number <= most && number > over);
  });
  return [...unknown, ...wrong.map(({ name }) => name)];
}
