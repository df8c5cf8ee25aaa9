import type { RawRow, RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";
import { headerOf } from "./which-table";
import { type SheetRow, sheetRows } from "./workbook/sheet-rows";
import { cellStyles, sharedStrings, workbookSheets } from "./workbook/workbook-parts";
import { zipEntries } from "./workbook/zip-entries";

/**
 * Reads the sheets of an XLSX workbook one after the other; the first row of a sheet, from `headerLine` on, is its header. Empty
 * sheets are passed over.
 */
export async function* readWorkbook(
  path: string,
  name: string,
  headerLine = 1,
): AsyncGenerator<RawSheet> {
  const refuse = (trouble: unknown) =>
    new UnreadableFile(
      name,
      `it cannot be read as a workbook (${trouble instanceof Error ? trouble.message : String(trouble)}); save it as .xlsx again, or its sheets as CSV files.`,
    );
  const parts = await zipEntries(path).catch((trouble: unknown) => {
    throw refuse(trouble);
  });
  try {
    const { sheets, from1904 } = await workbookSheets(parts);
    const around = {
      strings: await sharedStrings(parts),
      styles: await cellStyles(parts),
      from1904,
    };
    for (const { title, part } of sheets) {
      const rows = sheetRows(parts, part, around);
      let first = await rows.next();
      while (!first.done && first.value.line < headerLine) first = await rows.next();
      if (first.done) continue;
      const label = `${name}, sheet ${title}`;
      const columns = [...first.value.cells].map(([column, text]) => ({ column, text }));
      const header = headerOf(columns.map(({ text }) => text));
      const names = new Map(columns.map(({ column }, place) => [column, header[place] ?? ""]));
      const close = async () => void (await rows.return(undefined));
      yield { name: label, title, header, rows: named(rows, names, refuse), close };
    }
  } catch (trouble) {
    throw trouble instanceof UnreadableFile ? trouble : refuse(trouble);
  } finally {
    parts.close();
  }
}

async function* named(
  rows: AsyncGenerator<SheetRow>,
  names: ReadonlyMap<number, string>,
  refuse: (trouble: unknown) => UnreadableFile,
): AsyncGenerator<RawRow> {
  try {
    for await (const row of rows) yield rawRow(row, names);
  } catch (trouble) {
    throw refuse(trouble);
  }
}

function rawRow({ line, cells }: SheetRow, names: ReadonlyMap<number, string>): RawRow {
  const row: Record<string, string> = {};
  let beyond: number | undefined;
  for (const [column, text] of cells) {
    const name = names.get(column);
    if (name === undefined) beyond ??= column;
    else row[name] = text;
  }
  if (beyond === undefined) return { line, cells: row };
  return {
    line,
    cells: row,
    troubles: [{ found: `a value in column ${letters(beyond)}`, remedy }],
    misplaced: true,
  };
}

const remedy = "the header row has no name over it; name the column, or empty the cell";

/** A column as a sheet shows it: 28 is AB. */
function letters(column: number): string {
  if (column === 0) return "";
  return letters(Math.floor((column - 1) / 26)) + String.fromCharCode(65 + ((column - 1) % 26));
}
