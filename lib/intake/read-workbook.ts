import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";
import { headerOf } from "./which-table";
import { type SheetRow, sheetRows } from "./workbook/sheet-rows";
import { dateStyles, sharedStrings, workbookSheets } from "./workbook/workbook-parts";
import { type Parts, zipEntries } from "./workbook/zip-entries";

/** Reads the sheets of an XLSX workbook one after the other; the first row of a sheet is its header. Empty sheets are passed over. */
export async function* readWorkbook(path: string, name: string): AsyncGenerator<RawSheet> {
  const refuse = (trouble: unknown) =>
    new UnreadableFile(name, `it cannot be read as a workbook (${trouble instanceof Error ? trouble.message : String(trouble)}); save it as .xlsx again, or its sheets as CSV files.`);
  const parts = await zipEntries(path).catch((trouble: unknown) => {
    throw refuse(trouble);
  });
  try {
    const sheets = await workbookSheets(parts);
    const strings = await sharedStrings(parts);
    const dates = await dateStyles(parts);
    for (const { title, part } of sheets) {
      const rows = sheetRows(parts, part, strings, dates);
      const first = await rows.next();
      if (first.done) continue;
      const label = `${name}, sheet ${title}`;
      const columns = [...first.value.cells].map(([column, text]) => ({ column, text }));
      const header = headerOf(columns.map(({ text }) => text), label);
      const names = new Map(columns.map(({ column }, place) => [column, header[place] ?? ""]));
      yield { name: label, title, header, rows: named(rows, names) };
    }
  } catch (trouble) {
    throw trouble instanceof UnreadableFile ? trouble : refuse(trouble);
  } finally {
    parts.close();
  }
}

async function* named(rows: AsyncGenerator<SheetRow>, names: ReadonlyMap<number, string>): AsyncGenerator<RawRow> {
  for await (const { line, cells } of rows) {
    const beyond = [...cells.keys()].find((column) => !names.has(column));
    if (beyond !== undefined) {
      yield { line, trouble: { found: `a value in column ${beyond}`, remedy: "the header row has no name over it; name the column or empty the cell" } };
      continue;
    }
    const row: Record<string, string> = {};
    for (const [column, text] of cells) row[names.get(column) ?? ""] = text;
    yield { line, cells: row };
  }
}
