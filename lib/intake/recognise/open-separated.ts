import { createReadStream } from "node:fs";
import { type CsvRow, csvRows } from "../csv-rows";
import type { FileLayout } from "../mapping/file-layout";
import type { RawRow, RawSheet } from "../raw-row";
import { brokenWords } from "../read-csv";
import { UnreadableFile } from "../unreadable-file";
import { headerNames } from "./header-names";

/** Separated text under a layout, as a stream; undefined where nothing stands from the header line on. */
export async function openSeparated(
  path: string,
  name: string,
  layout: FileLayout,
): Promise<RawSheet | undefined> {
  const source = createReadStream(path);
  const batches = csvRows(source, layout);
  for (;;) {
    const { done, value: rows } = await batches.next();
    if (done) return undefined;
    const at = rows.findIndex((row) => row.line >= layout.headerLine && !isBlank(row));
    const first = rows[at];
    if (!first) continue;
    if (first.broken || first.cells.some((cell) => cell.includes("\0"))) {
      source.destroy();
      throw new UnreadableFile(
        name,
        `line ${first.line} should hold the names of the columns, and cannot be read; is it the right line, and the right encoding?`,
      );
    }
    const header = headerNames(first.cells);
    return {
      name,
      title: name,
      header,
      rows: rowsOf(rows.slice(at + 1), batches, header),
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

function isBlank(row: CsvRow): boolean {
  return row.broken === undefined && row.cells.every((cell) => cell === "" || cell.trim() === "");
}

function rawRow({ line, cells: texts, broken }: CsvRow, header: readonly string[]): RawRow {
  if (broken) return { line, cells: {}, troubles: [brokenWords[broken]], misplaced: true };
  const cells: Record<string, string> = {};
  const count = texts.length;
  for (let place = 0; place < header.length && place < count; place += 1)
    cells[header[place] as string] = texts[place] as string;
  if (count === header.length) return { line, cells };
  // Some systems end every line with a separator; empty cells beyond the header say nothing.
  if (count > header.length && texts.slice(header.length).every((text) => text.trim() === ""))
    return { line, cells };
  const found = count === 1 ? "1 cell" : `${count} cells`;
  const remedy = `the header has ${header.length}; a separator is missing or too many in this line`;
  return { line, cells, troubles: [{ found, remedy }], misplaced: true };
}
