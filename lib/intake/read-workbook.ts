import { gathered } from "./batched";
import type { RawRow, RawSheet, Trouble } from "./raw-row";
import { headerOf } from "./which-table";
import { openWorkbook } from "./workbook/open-workbook";
import type { SheetRow } from "./workbook/sheet-rows";

/** Which row of a sheet is its header, and what its columns are called by the cells of it. */
export type SheetHeader = {
  readonly headerLine: number;
  columns(cells: ReadonlyMap<number, string>, name: string): Map<number, string>;
};

const ofRecords: SheetHeader = {
  headerLine: 1,
  columns: (cells) => {
    const names = headerOf([...cells.values()]);
    return new Map([...cells.keys()].map((column, place) => [column, names[place] ?? ""]));
  },
};

/**
 * Reads the sheets of an XLSX workbook one after the other; the first row of a sheet, from the header line on, is its header. Empty
 * sheets are passed over.
 *
 * @throws UnreadableFile in one sentence where it is no workbook, or a damaged one
 */
export async function* readWorkbook(
  path: string,
  name: string,
  { headerLine, columns }: SheetHeader = ofRecords,
): AsyncGenerator<RawSheet> {
  const workbook = await openWorkbook(path, name);
  try {
    for (const sheet of workbook.sheets) {
      const rows = workbook.rows(sheet);
      let first = await rows.next();
      while (!first.done && (first.value.line < headerLine || first.value.cells.size === 0))
        first = await rows.next();
      if (first.done) continue;
      const label = `${name}, sheet ${sheet.title}`;
      const names = columns(first.value.cells, label);
      yield {
        ...{ name: label, title: sheet.title, header: [...names.values()] },
        rows: gathered(named(rows, names)),
        close: async () => void (await rows.return(undefined)),
      };
    }
  } finally {
    workbook.close();
  }
}

async function* named(
  rows: AsyncIterable<SheetRow>,
  names: ReadonlyMap<number, string>,
): AsyncGenerator<RawRow> {
  for await (const row of rows) yield rawRow(row, names);
}

function rawRow(
  { line, cells, troubles: found }: SheetRow,
  names: ReadonlyMap<number, string>,
): RawRow {
  const row: Record<string, string> = {};
  let beyond: number | undefined;
  for (const [column, text] of cells) {
    const name = names.get(column);
    if (name === undefined) beyond ??= column;
    else row[name] = text;
  }
  if (beyond !== undefined) {
    const troubles = [{ found: `a value in column ${letters(beyond)}`, remedy }];
    return { line, cells: row, troubles, misplaced: true };
  }
  const troubles: Trouble[] = [];
  for (const [column, problem] of found ?? []) {
    const name = names.get(column);
    if (name !== undefined) troubles.push({ column: name, ...problem });
  }
  return { line, cells: row, ...(troubles.length > 0 ? { troubles } : {}) };
}

const remedy = "the header row has no name over it; name the column, or empty the cell";

/** A column as a sheet shows it: 28 is AB. */
function letters(column: number): string {
  if (column === 0) return "";
  return letters(Math.floor((column - 1) / 26)) + String.fromCharCode(65 + ((column - 1) % 26));
}
