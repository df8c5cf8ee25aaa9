import type { Problem } from "../problem";
import { parseXml } from "./parse-xml";
import type { CellStyles } from "./workbook-parts";
import type { Parts } from "./zip-entries";

/**
 * A row of a sheet: its number, and its cells as text by column, empty ones absent. Of merged cells the first holds the value and
 * the others are empty, as the file has it: what they share is not written into each.
 */
export type SheetRow = {
  readonly line: number;
  readonly cells: ReadonlyMap<number, string>;
  /** What keeps a cell from being read, by column. */
  readonly troubles?: ReadonlyMap<number, Problem>;
};

/** What cells need beside the sheet. */
export type Around = {
  readonly strings: readonly string[];
  readonly styles: CellStyles;
  readonly from1904: boolean;
};

/** The last column and row of a sheet, and the longest text of a cell, by ECMA-376's common limits. */
const mostColumns = 16_384;
const mostRows = 1_048_576;
const longestText = 32_767;

/** Reads a sheet's rows as a stream; dates come as ISO text without an offset, formulas as the value that the file keeps of them. */
export async function* sheetRows(
  parts: Parts,
  part: string,
  around: Around,
): AsyncGenerator<SheetRow> {
  let ready: SheetRow[] = [];
  let cells = new Map<number, string>();
  let troubles: Map<number, Problem> | undefined;
  let line = 0;
  let column = 0;
  let type = "n";
  let style = 0;
  let text = "";
  let formula = false;
  let valued = false;
  let collecting = false;
  const source = await parts.open(part);
  const pieces = parseXml(source, {
    open: (name, attributes) => {
      if (name === "row") {
        line = rowNumber(attributes.r, line);
        cells = new Map();
        troubles = undefined;
        column = 0;
      } else if (name === "c") {
        column = columnOf(attributes.r) ?? column + 1;
        type = attributes.t ?? "n";
        style = Number(attributes.s ?? 0);
        text = "";
        formula = false;
        valued = false;
      } else if (name === "f") formula = true;
      else if (name === "v" || name === "t") {
        collecting = true;
        valued = true;
      }
    },
    close: (name) => {
      if (name === "v" || name === "t") collecting = false;
      else if (name === "c" && column <= mostColumns) {
        const trouble = type === "e" ? failed(text) : formula && !valued ? notWorkedOut : undefined;
        if (trouble) {
          troubles ??= new Map();
          troubles.set(column, trouble);
        }
        const read = text === "" ? "" : cellText(text, type, style, around);
        if (read.trim() !== "") cells.set(column, read);
      } else if (name === "row" && (cells.size > 0 || troubles))
        ready.push({ line, cells, ...(troubles ? { troubles } : {}) });
    },
    text: (piece) => {
      if (collecting && text.length <= longestText) text += piece;
    },
  });
  for await (const _ of pieces) {
    yield* ready;
    ready = [];
  }
}

const failed = (found: string): Problem => ({
  found,
  remedy: "a formula of the sheet failed here; write the value itself",
});

const notWorkedOut: Problem = {
  found: "a formula without its result",
  remedy: "open the workbook in the spreadsheet program and save it, so that results are kept",
};

/** Rows come in their order; a number that is none, or goes back, is that of the next row. */
function rowNumber(written: string | undefined, before: number): number {
  const line = Number(written);
  return Number.isInteger(line) && line > before && line <= mostRows ? line : before + 1;
}

/** The column of a reference as AB7, counted from 1; undefined where it is none. */
function columnOf(reference: string | undefined): number | undefined {
  const letters = reference && /^([A-Z]{1,3})\d*$/.exec(reference)?.[1];
  if (!letters) return undefined;
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column;
}

function cellText(
  text: string,
  type: string,
  style: number,
  { strings, styles, from1904 }: Around,
): string {
  if (type === "s") return strings[Number(text)] ?? "";
  if (type === "b") return text === "1" ? "yes" : "no";
  if (type !== "n") return text;
  if (Number.isNaN(Number(text))) return text;
  if (styles.dates.has(style)) return dateText(Number(text) + (from1904 ? daysTo1904 : 0));
  if (styles.percentages.has(style)) return `${Number((Number(text) * 100).toPrecision(12))}%`;
  // 0.1 + 0.2 in a cell is kept with 17 digits; 15 are what a sheet shows.
  return String(Number(Number(text).toPrecision(15)));
}

/** Days between the first days of the two systems in which workbooks count dates. */
const daysTo1904 = 1462;

/** A serial day number of the 1900 system (day 60 is the 29 February 1900 that never was) as ISO text. */
function dateText(serial: number): string {
  const at = new Date(Math.round((serial - 25_569) * 86_400) * 1000);
  if (Number.isNaN(at.getTime()) || serial < 61) return String(serial);
  const iso = at.toISOString();
  return Number.isInteger(serial) ? iso.slice(0, 10) : iso.slice(0, 19);
}
