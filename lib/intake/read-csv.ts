import { createReadStream } from "node:fs";
import { type CsvRow, csvRows } from "./csv-rows";
import { longestLine } from "./lines-of";
import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";
import { headerOf } from "./which-table";

/**
 * Reads a CSV file (RFC 4180, UTF-8, with or without a byte order mark) as a stream. A row of another length than the
 * header, or one that cannot be cut into cells, is told as such and costs no other row. Undefined where the file is empty.
 */
export async function readCsv(path: string, name: string): Promise<RawSheet | undefined> {
  const source = createReadStream(path);
  const batches = csvRows(source);
  for (;;) {
    const { done, value: rows } = await batches.next();
    if (done) return undefined;
    const first = rows.find((row) => !isBlank(row));
    if (!first) continue;
    if (first.broken || first.cells.some((cell) => cell.includes("\0"))) {
      source.destroy();
      throw new UnreadableFile(
        name,
        "its first row is no header of a CSV file; save it as CSV with commas, in UTF-8.",
      );
    }
    const header = headerOf(first.cells);
    const rest = rows.slice(rows.indexOf(first) + 1);
    return {
      name,
      title: name,
      header,
      rows: rowsOf(rest, batches, header),
      close: async () => void source.destroy(),
    };
  }
}

async function* rowsOf(
  first: readonly CsvRow[],
  batches: AsyncGenerator<CsvRow[]>,
  header: readonly string[],
): AsyncGenerator<RawRow> {
  for (const row of first) if (!isBlank(row)) yield rawRow(row, header);
  for await (const rows of batches)
    for (const row of rows) if (!isBlank(row)) yield rawRow(row, header);
}

/** Spreadsheets save rows of nothing but commas below their tables. */
function isBlank(row: CsvRow): boolean {
  return row.broken === undefined && row.cells.every((cell) => cell === "" || cell.trim() === "");
}

function rawRow(row: CsvRow, header: readonly string[]): RawRow {
  if (row.broken)
    return { line: row.line, cells: {}, troubles: [brokenWords[row.broken]], misplaced: true };
  const cells: Record<string, string> = {};
  const count = row.cells.length;
  for (let place = 0; place < header.length && place < count; place += 1)
    cells[header[place] ?? ""] = row.cells[place] ?? "";
  if (count === header.length) return { line: row.line, cells };
  const found = count === 1 ? "1 cell" : `${count} cells`;
  const remedy = `the header has ${header.length}; a comma is missing or too many, or a text with a comma in it needs quotes round it`;
  const missing = Math.max(0, header.length - count);
  return { line: row.line, cells, troubles: [{ found, remedy }], misplaced: true, missing };
}

/** What is told of a row that cannot be cut into cells. */
export const brokenWords = {
  "open quote": {
    found: "a quote that is never closed",
    remedy: "put a quote at the end of that cell, or take the one at its beginning out",
  },
  "too long": {
    found: `more than ${longestLine} characters in one line`,
    remedy: "no row is that long; export the file again",
  },
};
