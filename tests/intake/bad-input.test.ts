import { appendFile, truncate } from "node:fs/promises";
import { describe, expect, test } from "vitest";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { readSheets } from "@/lib/intake/read-sheets";
import { recognise } from "@/lib/intake/recognise/recognise";
import { canalOfEach, readBothWays } from "./read-both-ways";
import { context } from "./read-text";
import { withFile } from "./with-file";

// Expected outcomes are worked by hand from the few lines of each file; the beginnings of pictures and programs are those of
// their published formats.

const header = "session_id,canal,preparation";
const good = "V-1,MB,rotary";

const bothWays = (content: string | Uint8Array, name = "canals.csv") =>
  withFile(content, (path) => readBothWays(path, name));

describe("text with something wrong in it", () => {
  test.each([
    ["nothing", "", /^canals\.csv: it is empty/, /^canals\.csv: it is empty/],
    ["its header alone", `${header}\n`, { good: 0, held: 0 }, /there are no rows below its header/],
    [
      "a cell too few and one too many",
      `${header}\n${good}\nV-2,MB\nV-3,MB,rotary,5\n${good}\n`,
      { good: 2, held: 2, reason: /line 3: found 2 cells; the header has 3/ },
      { good: 2, held: 2, reason: /line 3: found 2 cells; the header has 3/ },
    ],
    [
      "a quote that is never closed",
      `${header}\n${good}\n"V-2,MB,rotary\n${good}\n`,
      { good: 2, held: 1, reason: /line 3: found a quote that is never closed/ },
      { good: 2, held: 1, reason: /line 3: found a quote that is never closed/ },
    ],
    [
      "a NUL in a cell",
      `${header}\n${`${good}\n`.repeat(50)}V-\0,MB,rotary\n`,
      { good: 50, held: 1, reason: /line 52, session_id: .* control character/ },
      { good: 50, held: 1, reason: /line 52, session_id: .* control character/ },
    ],
    [
      "NULs all over",
      `${header}\n\0\0\0\0\0\0\n`,
      { good: 0, held: 1, reason: /line 2: found 1 cell/ },
      /it is no text, as it has empty bytes in it/,
    ],
    [
      "every kind of end of line",
      `${header}\r\n${good}\n${good}\r${good}\r\n\r\n${good}`,
      { good: 4, held: 0 },
      { good: 4, held: 0 },
    ],
  ])("%s", async (_, content, records, foreign) => {
    const came = await bothWays(content);
    expectCame(came.records, records);
    expectCame(came.foreign, foreign);
  });

  test("a moment before 1900 is held, and asks whether the year is right", async () => {
    const came = await withFile("Visit;Date\nV-1;31.12.1899 09:10\nV-2;01.07.2026 09:10\n", read);
    expect(came).toEqual([
      expect.stringMatching(/line 2, started_at: .* is the year right\?$/),
      "",
    ]);
  });
});

/** The reasons why a visit's row is held for its beginning alone. */
async function read(path: string): Promise<string[]> {
  const { layout } = await recognise(path, "visits.csv");
  const mapping = {
    ...canalOfEach(layout, "Visit"),
    tables: [
      {
        table: "irrigation" as const,
        fields: {
          ...{ session_id: { columns: ["Visit"] }, canal: { always: "MB" }, seq: { always: "1" } },
          ...{ irrigant: { always: "naocl" }, delivery: { always: "syringe" } },
          volume_ml: { always: "3" },
          started_at: {
            columns: ["Date"],
            clock: { day: "day-month-year" as const, hours: 24 as const },
          },
        },
      },
    ],
  };
  const reasons: string[] = [];
  for await (const { rows } of readMapped(path, "visits.csv", mapping, context))
    for await (const row of rows)
      reasons.push(row.verdict === "held" ? (row.reasons[0]?.sentence ?? "") : "");
  return reasons;
}

describe("the wrong file altogether", () => {
  const bytes = (hex: string) => Buffer.concat([Buffer.from(hex, "hex"), Buffer.alloc(300, 7)]);
  test.each([
    ["a picture", bytes("89504e470d0a1a0a0000000d49484452")],
    ["a picture", bytes("ffd8ffe000104a464946")],
    ["a PDF document", Buffer.from("%PDF-1.7\n1 0 obj\n")],
    ["a program", bytes("7f454c46020101")],
    ["a program", bytes("4d5a900003000000")],
    ["a web page", Buffer.from("\ufeff<!DOCTYPE html><html>")],
    ["a database", Buffer.from("SQLite format 3\0")],
    ["a workbook or document of the old kind; save it as .xlsx", bytes("d0cf11e0a1b11ae1")],
    ["a packed file; unpack it first", bytes("1f8b0800")],
  ])("is told to be %s", async (what, content) => {
    const came = await bothWays(content);
    const sentence = `canals.csv: it is ${what}; no table can be read from it.`;
    expect(came).toEqual({ records: sentence, foreign: sentence });
  });

  test("bytes of no kind are no text", async () => {
    const { foreign } = await bothWays(Buffer.from(Array.from({ length: 999 }, (_, n) => n % 7)));
    expect(foreign).toMatch(/it is no text/);
  });

  test("a table whose first column is called MZ, PK or BM is a table", async () => {
    for (const name of ["MZ", "PK", "BM", "GIF"])
      expect((await bothWays(`${name};canal\nV-1;MB\n`)).foreign).toEqual({ good: 1, held: 0 });
  });

  test("a folder, a missing file and a pipe without end are no files", async () => {
    expect((await readBothWays("/dev/zero", "canals.csv")).foreign).toMatch(/it is no file/);
    expect((await readBothWays("/tmp", "canals.csv")).records).toMatch(/it is no file/);
    expect((await readBothWays("/nowhere/a", "canals.csv")).foreign).toMatch(/cannot be opened/);
  });
});

describe("a file that changes while it is read", () => {
  const many = `${header}\n${`${good}\n`.repeat(20_000)}`;
  const changed = /canals\.csv: it changed while it was read; wait until it is written\.$/;
  const change = {
    grows: (path: string) => appendFile(path, `${good}\n`),
    shrinks: (path: string) => truncate(path, 100_000),
  };

  test.each(["grows", "shrinks"] as const)("%s, and is refused", async (how) => {
    await withFile(many, async (path) => {
      const sheets = readSheets(path, "canals.csv", context);
      await expect(readAndChange(sheets, () => change[how](path))).rejects.toThrow(changed);
    });
    await withFile(many, async (path) => {
      const { layout } = await recognise(path, "canals.csv");
      const sheets = readMapped(path, "canals.csv", canalOfEach(layout, "session_id"), context);
      await expect(readAndChange(sheets, () => change[how](path))).rejects.toThrow(changed);
    });
  });

  async function readAndChange(sheets: ReturnType<typeof readSheets>, act: () => Promise<void>) {
    let rows = 0;
    for await (const sheet of sheets)
      for await (const _ of sheet.rows) if (rows++ === 10) await act();
    return rows;
  }
});

type Expected = RegExp | { good: number; held: number; reason?: RegExp };

function expectCame(came: unknown, expected: Expected): void {
  if (expected instanceof RegExp) expect(came).toMatch(expected);
  else
    expect(came).toEqual({
      ...expected,
      ...(expected.reason ? { reason: expect.stringMatching(expected.reason) } : {}),
    });
}
