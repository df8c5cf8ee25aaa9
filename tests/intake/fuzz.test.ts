import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { tableNames, tables } from "@/lib/records/tables";
import { readAll, rowsIn } from "./read-text";

// Properties: no expected value but the count of rows, computed from the rows written.

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
      { numRuns: 300 },
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
      { numRuns: 300 },
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
        { numRuns: 300 },
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
