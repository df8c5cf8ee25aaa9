import type { Readable } from "node:stream";
import { type Line, linesOf, longestLine } from "./lines-of";
import type { Encoding } from "./mapping/file-layout";

/** One row of a CSV file: its cells, or what keeps it from being cut into cells. `line` is where it starts. */
export type CsvRow = {
  readonly line: number;
  readonly cells: readonly string[];
  readonly broken?: "open quote" | "too long";
};

/** How separated text is written; without a quote (empty) a quote is a letter like others. */
export type Cut = {
  readonly encoding: Encoding;
  readonly separator: string;
  readonly quote: string;
};

/** As the record format has it: RFC 4180, UTF-8. */
export const commaSeparated: Cut = { encoding: "utf-8", separator: ",", quote: '"' };

/** A row over more lines than this has a quote that is never closed. */
const mostLines = 200;
/** After so many of them it is fewer lines, as each costs looking through so many. */
const manyOpen = 1000;
const fewLines = 3;

/**
 * Cuts separated text (RFC 4180, or with another separator and quote) into rows, a piece of the file at a time. A quote that
 * is never closed costs only the line it stands in: where a quoted cell runs to the end of the file, or further than a row
 * can, that line is told as broken and reading goes on after it. A quote in a cell that does not begin with one is taken as
 * it stands. Blank lines are passed over.
 */
export async function* csvRows(
  source: Readable,
  how: Cut = commaSeparated,
): AsyncGenerator<CsvRow[]> {
  let open: Line[] = [];
  let neverClosed = 0;
  const longest = () => (neverClosed < manyOpen ? mostLines : fewLines);
  for await (const lines of linesOf(source, how.encoding)) {
    const cutNow = cut(open.length === 0 ? lines : [...open, ...lines], how, longest(), false);
    open = cutNow.open;
    for (const { broken } of cutNow.rows) if (broken === "open quote") neverClosed += 1;
    yield cutNow.rows;
  }
  yield cut(open, how, longest(), true).rows;
}

/** The whole rows of these lines, and the lines of a row that is still open. */
function cut(
  lines: readonly Line[],
  how: Cut,
  longest: number,
  last: boolean,
): { rows: CsvRow[]; open: Line[] } {
  const { separator, quote } = how;
  const rows: CsvRow[] = [];
  let place = 0;
  while (place < lines.length) {
    const { text, number, tooLong } = lines[place] as Line;
    let used = 1;
    if (tooLong) rows.push({ line: number, cells: [], broken: "too long" });
    else if (quote === "" || !text.includes(quote)) {
      if (text.trim() !== "") rows.push({ line: number, cells: text.split(separator) });
    } else {
      const row = quotedRow(lines, place, how, longest);
      if (row === "more" && !last) return { rows, open: lines.slice(place) };
      if (typeof row === "string") rows.push({ line: number, cells: [], broken: "open quote" });
      else {
        rows.push({ line: number, cells: row.cells });
        used = row.lines;
      }
    }
    place += used;
  }
  return { rows, open: [] };
}

/** The cells of the row that starts at a line, over as many lines as its quotes take, or why there is none. */
function quotedRow(
  lines: readonly Line[],
  from: number,
  { separator, quote: mark }: Cut,
  longest: number,
): { cells: string[]; lines: number } | "more" | "never closed" {
  const cells: string[] = [];
  let length = 0;
  let number = from;
  let text = lines[number]?.text ?? "";
  let at = 0;
  for (;;) {
    if (text[at] !== mark) {
      const comma = text.indexOf(separator, at);
      cells.push(comma < 0 ? text.slice(at) : text.slice(at, comma));
      if (comma < 0) return { cells, lines: number - from + 1 };
      at = comma + 1;
      continue;
    }
    let cell = "";
    at += 1;
    for (;;) {
      const quote = text.indexOf(mark, at);
      if (quote < 0) {
        cell += `${text.slice(at)}\n`;
        number += 1;
        length += text.length;
        const next = lines[number];
        if (number - from >= longest || length > longestLine || next?.tooLong)
          return "never closed";
        if (!next) return "more";
        text = next.text;
        at = 0;
        continue;
      }
      cell += text.slice(at, quote);
      at = quote + 1;
      if (text[at] === undefined || text[at] === separator) break;
      // Twice is one quote (RFC 4180); alone within a cell it is taken as it stands.
      cell += mark;
      if (text[at] === mark) at += 1;
    }
    cells.push(cell);
    if (text[at] === undefined) return { cells, lines: number - from + 1 };
    at += 1;
  }
}
