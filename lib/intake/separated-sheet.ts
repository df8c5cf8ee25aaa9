import { createReadStream, type ReadStream } from "node:fs";
import { Batched } from "./batched";
import { type CsvRow, type Cut, csvRows } from "./csv-rows";
import { longestLine } from "./lines-of";
import { refuseManyColumns } from "./most-columns";
import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";

/** How a file of separated text is opened: how it is cut, which line names the columns, and what is said of it. */
export type Opening = {
  readonly cut: Cut;
  /** The first line that may hold the names of the columns. */
  readonly headerLine: number;
  header(cells: readonly string[]): string[];
  /** What is wrong with a header that cannot be read, given its line. */
  unreadable(line: number): string;
  /** What would be right of a row of another length than the header's. */
  remedy(columns: number): string;
  /** Empty cells beyond the header say nothing, as some systems end every line with a separator. */
  readonly openEnded: boolean;
};

/**
 * The rows of separated text as a stream. A row of another length than the header, or one that cannot be cut into cells, is told as
 * such and costs no other row. Undefined where nothing stands from the header line on.
 */
export async function separatedSheet(
  path: string,
  name: string,
  how: Opening,
): Promise<RawSheet | undefined> {
  const source = createReadStream(path);
  const batches = csvRows(source, how.cut);
  for (;;) {
    const { done, value: rows } = await batches.next();
    if (done) return undefined;
    const at = rows.findIndex((row) => row.line >= how.headerLine && !isBlank(row));
    const first = rows[at];
    if (!first) continue;
    const header = namesIn(first, name, how, source);
    return {
      name,
      title: name,
      header,
      rows: new Batched(rowsOf(rows.slice(at + 1), batches, header, how)),
      close: async () => void source.destroy(),
    };
  }
}

/** The columns' names; the file is let go of where there are none. */
function namesIn(
  { line, cells, broken }: CsvRow,
  name: string,
  how: Opening,
  source: ReadStream,
): string[] {
  try {
    if (broken || cells.some((cell) => cell.includes("\0")))
      throw new UnreadableFile(name, how.unreadable(line));
    refuseManyColumns(cells.length, name);
    return how.header(cells);
  } catch (trouble) {
    source.destroy();
    throw trouble;
  }
}

async function* rowsOf(
  first: readonly CsvRow[],
  batches: AsyncGenerator<CsvRow[]>,
  header: readonly string[],
  how: Opening,
): AsyncGenerator<Iterable<RawRow>> {
  yield filled(first, header, how);
  for await (const rows of batches) yield filled(rows, header, how);
}

function* filled(
  rows: readonly CsvRow[],
  header: readonly string[],
  how: Opening,
): Generator<RawRow> {
  for (const row of rows) if (!isBlank(row)) yield rawRow(row, header, how);
}

/** Spreadsheets save rows of nothing but separators below their tables. */
function isBlank(row: CsvRow): boolean {
  return row.broken === undefined && row.cells.every((cell) => cell === "" || cell.trim() === "");
}

function rawRow(
  { line, cells: texts, broken }: CsvRow,
  header: readonly string[],
  { openEnded, remedy }: Opening,
): RawRow {
  if (broken) return { line, cells: {}, troubles: [brokenWords[broken]], misplaced: true };
  const cells: Record<string, string> = {};
  const count = texts.length;
  for (let place = 0; place < header.length && place < count; place += 1)
    cells[header[place] ?? ""] = texts[place] ?? "";
  if (count === header.length) return { line, cells };
  const more = texts.slice(header.length);
  if (openEnded && more.length > 0 && more.every((text) => text.trim() === ""))
    return { line, cells };
  const found = count === 1 ? "1 cell" : `${count} cells`;
  const troubles = [{ found, remedy: remedy(header.length) }];
  const missing = Math.max(0, header.length - count);
  return { line, cells, troubles, misplaced: true, missing };
}

const brokenWords = {
  "open quote": {
    found: "a quote that is never closed",
    remedy: "put a quote at the end of that cell, or take the one at its beginning out",
  },
  "too long": {
    found: `more than ${longestLine} characters in one line`,
    remedy: "no row is that long; export the file again",
  },
};
