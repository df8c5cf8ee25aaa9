import { describe, expect, it } from "vitest";
import { checkRow } from "@/lib/intake/check-row";
import type { Context, HeldRow } from "@/lib/intake/sheet";
import { tableNames } from "@/lib/records/tables";
import { addMess } from "@/seed/add-mess";
import { makePractice } from "@/seed/make-practice";
import type { Row, Rows } from "@/seed/rows";
import { type Practice, practices, span } from "@/seed/scenario";

// Counts are worked by hand from the list in seed/add-mess.ts.

// Counts are those of the list in seed/add-mess.ts: cells spoilt, a visit without clinician, impossible visits.
const expected = { MEDLAR: 9 + 1 + 6, QUINCE: 10, SPINDLE: 7 };

describe.each(practices)("the files of $code", (practice) => {
  const rows = makePractice(practice, span.last);

  it("hold nothing that intake would hold, before they are spoilt", () => {
    expect(heldOf(practice, rows).map(told)).toEqual([]);
  });

  it("have exactly the spoilt rows held, each with a sentence about one column", () => {
    addMess(practice.code, rows, span.last);
    const held = heldOf(practice, rows);
    expect(held.map(told)).toHaveLength(expected[practice.code]);
    for (const { reasons } of held) expect(reasons[0]?.column, reasons[0]?.sentence).toBeTruthy();
  });
});

describe("spoiling", () => {
  it("leaves a visit that is not there and an instrument used after it separated, for the import to find", () => {
    const medlar = messy("MEDLAR");
    const parted = new Map(
      medlar.instruments
        .filter((row) => row.separated === "yes" && row.instrument_id)
        .map((row) => [row.instrument_id, row.session_id]),
    );
    const visits = medlar.sessions.map((row) => row.session_id);
    const after = medlar.instruments.filter((row) => {
      const visit = parted.get(row.instrument_id);
      return visit !== undefined && visits.indexOf(row.session_id) > visits.indexOf(visit);
    });
    expect(after).toHaveLength(1);
    const spindle = messy("SPINDLE");
    const known = new Set(spindle.sessions.map((row) => row.session_id));
    expect(spindle.canals.filter((row) => !known.has(row.session_id))).toHaveLength(1);
  });
});

function messy(code: Practice["code"]): Rows {
  const practice = practices.find((one) => one.code === code);
  if (!practice) throw new Error(code);
  const rows = makePractice(practice, span.last);
  addMess(code, rows, span.last);
  return rows;
}

function heldOf(practice: Practice, rows: Rows): HeldRow[] {
  const context: Context = {
    zoneOf: () => practice.zone,
    pseudonym: (_, reference) => `hash of ${reference}`,
    now: new Date(`${span.last}T23:59:59Z`),
  };
  return tableNames.flatMap((table) =>
    rows[table]
      .map((row, place) => {
        return checkRow(table, cellsOf(row), { file: `${table}.csv`, line: place + 2 }, context);
      })
      .filter((row) => row.verdict === "held"),
  );
}

function cellsOf(row: Row): Record<string, string> {
  const filled = Object.entries(row).filter(([, cell]) => cell !== undefined);
  return Object.fromEntries(filled.map(([column, cell]) => [column, String(cell)]));
}

function told(row: HeldRow): string | undefined {
  return row.reasons[0]?.sentence;
}
