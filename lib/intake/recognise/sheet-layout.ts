import type { FileLayout } from "../mapping/file-layout";
import { UnreadableFile } from "../unreadable-file";
import { type OpenWorkbook, openWorkbook } from "../workbook/open-workbook";
import type { WorkbookSheet } from "../workbook/workbook-parts";
import { type CutRow, headerLineOf } from "./header-line";
import type { Reading } from "./recognised";

/** So many rows of a sheet tell where its header is. */
const rowsLookedAt = 100;

/** What is told of a workbook: which sheet holds the table, on which line its header is, and the sheets that it may be. */
export type SheetLayout = {
  readonly layout: Pick<FileLayout, "sheet" | "headerLine">;
  readonly readings: Reading[];
  readonly sheets: readonly string[];
};

/** Looks for the table of a workbook. @throws UnreadableFile where all sheets are empty */
export async function sheetLayout(
  path: string,
  name: string,
  asked: Partial<FileLayout>,
): Promise<SheetLayout> {
  const workbook = await openWorkbook(path, name);
  try {
    const full: { title: string; rows: CutRow[] }[] = [];
    for (const sheet of workbook.sheets) {
      const rows = await firstRows(workbook, sheet);
      if (rows.length > 0) full.push({ title: sheet.title, rows });
    }
    const taken = full.find(({ title }) => title === asked.sheet) ?? full[0];
    if (!taken) throw new UnreadableFile(name, "it is empty; export it again.");
    // A table may have empty cells in any row, but its header has them all: it is about as wide as the widest row.
    const width = Math.max(...taken.rows.map(({ cells }) => cells.length));
    const { line, ...reading } = headerLineOf(taken.rows, width, Math.ceil(0.8 * width));
    return {
      layout: { sheet: taken.title, headerLine: asked.headerLine ?? line },
      readings: [sheetReading(full.length), reading],
      sheets: full.map(({ title }) => title),
    };
  } finally {
    workbook.close();
  }
}

async function firstRows(workbook: OpenWorkbook, sheet: WorkbookSheet): Promise<CutRow[]> {
  const read: { line: number; cells: ReadonlyMap<number, string> }[] = [];
  for await (const row of workbook.rows(sheet)) {
    if (row.cells.size > 0) read.push(row);
    if (read.length === rowsLookedAt) break;
  }
  return read.map(({ line, cells }) => ({ line, cells: [...cells.values()] }));
}

function sheetReading(sheets: number): Reading {
  return {
    about: "sheet",
    sure: sheets === 1 ? "certain" : "likely",
    why: sheets === 1 ? "It has one sheet." : `It has ${sheets} sheets; the first is taken.`,
  };
}
