import { parseXml } from "./parse-xml";
import type { CellStyles } from "./workbook-parts";
import type { Parts } from "./zip-entries";

/** A row of a sheet: its number, and its cells as text by column, empty ones absent. */
export type SheetRow = { readonly line: number; readonly cells: ReadonlyMap<number, string> };

/** What cells need beside the sheet. */
export type Around = {
  readonly strings: readonly string[];
  readonly styles: CellStyles;
  readonly from1904: boolean;
};

/** The last column of a sheet, and the longest text of a cell, by ECMA-376's common limits. */
const mostColumns = 16_384;
const longestText = 32_767;

/** Reads a sheet's rows as a stream; dates come as ISO text without an offset. */
export async function* sheetRows(
  parts: Parts,
  part: string,
  around: Around,
): AsyncGenerator<SheetRow> {
  let ready: SheetRow[] = [];
  let cells = new Map<number, string>();
  let line = 0;
  let column = 0;
  let type = "n";
  let style = 0;
  let text = "";
  let collecting = false;
  const source = await parts.open(part);
  const pieces = parseXml(source, {
    open: (name, attributes) => {
      if (name === "row") {
        line = Number(attributes.r ?? line + 1);
        cells = new Map();
        column = 0;
      } else if (name === "c") {
        column = attributes.r ? columnOf(attributes.r) : column + 1;
        type = attributes.t ?? "n";
        style = Number(attributes.s ?? 0);
        text = "";
      } else if (name === "v" || name === "t") collecting = true;
    },
    close: (name) => {
      if (name === "v" || name === "t") collecting = false;
      else if (name === "c" && text !== "" && column <= mostColumns) {
        const read = cellText(text, type, style, around);
        if (read.trim() !== "") cells.set(column, read);
      } else if (name === "row" && cells.size > 0) ready.push({ line, cells });
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

function columnOf(reference: string): number {
  let column = 0;
  for (const letter of reference.replace(/\d/g, ""))
    column = column * 26 + letter.charCodeAt(0) - 64;
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
