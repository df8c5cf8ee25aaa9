import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { tableNames, tables } from "@/lib/records/tables";
import { type ReadSheet, readPath } from "./read-text";
import { inlineRow, workbookOf } from "./write-zip";

// Properties: no expected value but the count of rows, computed from the rows written.

const seed = Number(process.env.CANAL_AUDIT_SEED ?? 20_261_126);

const word = fc.constantFrom(
  "V-1",
  "MB1",
  "naocl",
  "yes",
  "-3",
  "3,5",
  "26",
  "fdi",
  "2026-07-03T09:10:00",
  "2026-03-29T01:30:00",
  "NORTH",
  "",
);
const cell = fc.oneof(
  word,
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.string({ maxLength: 12 }),
);
const table = fc.constantFrom(...tableNames);

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-fuzz-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function readAll(name: string, content: string | Uint8Array): Promise<ReadSheet[]> {
  const path = join(folder, "file");
  await writeFile(path, content);
  return readPath(path, name);
}

async function rowsIn(name: string, content: string | Uint8Array): Promise<ReadSheet["rows"]> {
  const [sheet] = await readAll(name, content);
  if (!sheet) throw new Error("no sheet");
  return sheet.rows;
}

describe("whatever comes in", () => {
  it("no row of a CSV file is lost, and none stops it", async () => {
    const file = table.chain((name) => {
      const columns = tables[name].columns.map((column) => column.name);
      return fc.tuple(
        fc.constant(name),
        fc.array(fc.array(cell, { minLength: columns.length - 1, maxLength: columns.length + 1 }), {
          maxLength: 12,
        }),
      );
    });
    await fc.assert(
      fc.asyncProperty(file, async ([name, rows]) => {
        const header = tables[name].columns.map((column) => column.name).join(",");
        const lines = rows.map((cells) =>
          cells.map((text) => `"${text.replaceAll('"', '""')}"`).join(","),
        );
        const read = await rowsIn(`${name}.csv`, `${[header, ...lines].join("\n")}\n`);
        const blank = rows.filter((cells) => cells.every((text) => text.trim() === ""));
        expect(read).toHaveLength(rows.length - blank.length);
        expectWhole(read);
      }),
      { numRuns: 2000, seed },
    );
  });

  it("no item of a JSON array is lost, and none stops it", async () => {
    const value = fc.oneof(cell, fc.jsonValue({ maxDepth: 2 }));
    const file = table.chain((name) => {
      const columns = tables[name].columns.map((column) => column.name);
      const row = fc.dictionary(
        fc.oneof(
          { weight: 9, arbitrary: fc.constantFrom(...columns) },
          { weight: 1, arbitrary: fc.string() },
        ),
        value,
      );
      return fc.tuple(
        fc.constant(name),
        fc.array(
          fc.oneof({ weight: 4, arbitrary: row }, { weight: 1, arbitrary: fc.jsonValue() }),
          { maxLength: 12 },
        ),
        fc.constantFrom(undefined, 1),
      );
    });
    await fc.assert(
      fc.asyncProperty(file, async ([name, items, indent]) => {
        // With a row of the table first, so that the file is known for what it is.
        const first = Object.fromEntries(
          tables[name].columns.map((column) => [column.name, column.example]),
        );
        const read = await rowsIn(`${name}.json`, JSON.stringify([first, ...items], null, indent));
        expect(read.map((row) => row.line)).toEqual([first, ...items].map((_, place) => place + 1));
        expectWhole(read);
      }),
      { numRuns: 2000, seed },
    );
  });

  it("no line of a file of one JSON object a line is lost, and none stops it", async () => {
    const line = fc.oneof(
      fc
        .dictionary(fc.constantFrom("session_id", "canal", "seq", "x"), fc.jsonValue())
        .map((row) => JSON.stringify(row)),
      fc.stringMatching(/^[[\]{}",:\\ a1é]{1,20}$/),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(line, { maxLength: 12 }), async (lines) => {
        const whole = lines.filter((text) => text.trim() !== "");
        const read = await rowsIn("canals.ndjson", [`{"session_id":"V"}`, ...lines].join("\n"));
        expect(read).toHaveLength(whole.length + 1);
        expectWhole(read);
      }),
      { numRuns: 1000, seed },
    );
  });

  it("no row of a workbook is lost, and none stops it", async () => {
    const columns = tables.canals.columns.map((column) => column.name);
    const text = fc
      .string({ maxLength: 8 })
      .map((some) => some.replace(/[<&\p{Cc}\p{Surrogate}\ufffe\uffff]/gu, "."));
    const sheetCell = fc.oneof(
      fc.oneof(word, text).map((some) => `<c t="inlineStr"><is><t>${some}</t></is></c>`),
      fc
        .tuple(fc.constantFrom("n", "s", "b", "e", "str", "d", "x"), fc.oneof(fc.double(), word))
        .map(([type, value]) => `<c t="${type}" s="9"><v>${value}</v></c>`),
      fc.constantFrom(
        "<c/>",
        "<c><f>1+1</f></c>",
        '<c r="ZZ1"><v>1</v></c>',
        '<c r="!"><v>1</v></c>',
      ),
    );
    const sheetRow = fc
      .tuple(
        fc.constantFrom("", ' r="5"', ' r="x"', ' r="99999999999"'),
        fc.array(sheetCell, { maxLength: 9 }),
      )
      .map(([at, cells]) => `<row${at}>${cells.join("")}</row>`);
    await fc.assert(
      fc.asyncProperty(fc.array(sheetRow, { maxLength: 9 }), async (rows) => {
        const first = inlineRow(columns.map((_, place) => `${place}`));
        const data = [inlineRow(columns), ...rows.flatMap((row) => [row, first])].join("");
        const read = await rowsIn("canals.xlsx", workbookOf("canals", data));
        // Rows of empty cells are passed over; the full ones between them are all there, in their order.
        const full = read.filter((row) => row.verdict === "held" && row.raw.session_id === "0");
        expect(full.length).toBeGreaterThanOrEqual(rows.length);
        expect(read.length).toBeLessThanOrEqual(2 * rows.length);
        expect(read.every((row, place) => row.line > (read[place - 1]?.line ?? 1))).toBe(true);
        expectWhole(read);
      }),
      { numRuns: 1000, seed },
    );
  });

  it.each(["csv", "json", "ndjson", "xlsx"])(
    "any bytes as .%s are read or refused in one sentence",
    async (ending) => {
      const text = fc.stringMatching(/^[[\]{}",:\n a1]{0,80}$/).map((some) => Buffer.from(some));
      await fc.assert(
        fc.asyncProperty(fc.oneof(fc.uint8Array({ maxLength: 200 }), text), async (bytes) => {
          try {
            expectWhole((await readAll(`canals.${ending}`, bytes)).flatMap((sheet) => sheet.rows));
          } catch (trouble) {
            expect(trouble).toBeInstanceOf(UnreadableFile);
            expect(String(trouble)).toMatch(
              new RegExp(`^UnreadableFile: canals\\.${ending}: .+[.?]$`),
            );
          }
        }),
        { numRuns: 1000, seed },
      );
    },
  );
});

/** Each row is either, a held one has its reasons, and PostgreSQL can store all of it. */
function expectWhole(rows: Awaited<ReturnType<typeof rowsIn>>) {
  for (const row of rows) {
    if (row.verdict === "held") expect(row.reasons.length).toBeGreaterThan(0);
    else
      expect(
        Object.values(row.values).every((value) => value !== undefined && !Number.isNaN(value)),
      ).toBe(true);
    const kept =
      row.verdict === "held"
        ? [row.key, ...Object.values(row.raw), ...row.reasons.map((reason) => reason.sentence)]
        : Object.values(row.values);
    for (const text of kept) expect(String(text)).not.toMatch(/\0|\p{Surrogate}/u);
  }
}
