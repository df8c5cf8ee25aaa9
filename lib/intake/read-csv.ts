import { createReadStream } from "node:fs";
import { type CsvError, type Info, parse } from "csv-parse";
import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";
import { headerOf } from "./which-table";

type Parsed = { record: string[]; info: Info };

/** A row longer than this is no row: most likely a quote that is never closed. */
const longestRow = 1_000_000;

/**
 * Reads a CSV file (RFC 4180, UTF-8, with or without a byte order mark) as a stream. A row of another length than the
 * header is told as such; a file that stops being CSV, as by a quote that is never closed, ends with a row that says so.
 */
export async function readCsv(path: string, name: string): Promise<RawSheet | undefined> {
  const parser = parse({ bom: true, relax_column_count: true, skip_empty_lines: true, info: true, max_record_size: longestRow });
  const source = createReadStream(path);
  source.on("error", (trouble) => parser.destroy(trouble));
  source.pipe(parser);
  const records = parser[Symbol.asyncIterator]() as AsyncIterator<Parsed>;
  const first = await records.next().catch((trouble: unknown) => {
    throw new UnreadableFile(name, `it is no CSV file (${csvTrouble(trouble)}); save it as CSV with commas, in UTF-8.`);
  });
  if (first.done) return undefined;
  const header = headerOf(first.value.record, name);
  return { name, title: name, header, rows: rowsOf(records, header, first.value.info.lines) };
}

async function* rowsOf(records: AsyncIterator<Parsed>, header: readonly string[], headerLines: number): AsyncGenerator<RawRow> {
  let before = headerLines;
  for (;;) {
    let next: IteratorResult<Parsed>;
    try {
      next = await records.next();
    } catch (trouble) {
      yield {
        line: before + 1,
        trouble: { found: "a row that does not end", remedy: `the rest of the file could not be read (${csvTrouble(trouble)}); mend the quotes there and bring the file in again` },
      };
      return;
    }
    if (next.done) return;
    const { record, info } = next.value;
    const line = before + 1 + blankLines(before, info, record);
    before = info.lines;
    yield cut(record, header, line);
  }
}

/** Rows start on the line after the previous one ended; blank lines in between are passed over. */
function blankLines(before: number, info: Info, record: readonly string[]): number {
  if (info.lines - before <= 1) return 0;
  const own = record.reduce((lines, cell) => lines + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
  return Math.max(0, info.lines - before - 1 - own);
}

function cut(record: readonly string[], header: readonly string[], line: number): RawRow {
  if (record.length !== header.length) {
    const found = `${record.length} cells`;
    return { line, trouble: { found, remedy: `the header has ${header.length}; a comma is missing or too many, or a text with a comma needs quotes round it` } };
  }
  const cells: Record<string, string> = {};
  for (let place = 0; place < header.length; place += 1) cells[header[place] ?? ""] = record[place] ?? "";
  return { line, cells };
}

function csvTrouble(trouble: unknown): string {
  const code = (trouble as CsvError | undefined)?.code;
  if (code === "CSV_QUOTE_NOT_CLOSED") return "a quote is never closed";
  if (code === "CSV_MAX_RECORD_SIZE") return `a row is longer than ${longestRow} characters; is a quote never closed?`;
  if (code === "INVALID_OPENING_QUOTE" || code === "CSV_INVALID_CLOSING_QUOTE") return "a quote stands in the middle of a cell";
  return "its rows cannot be told apart";
}
