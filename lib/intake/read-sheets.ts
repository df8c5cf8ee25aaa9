import { extname } from "node:path";
import { type TableName, tables } from "@/lib/records/tables";
import { Batched } from "./batched";
import { checkMisplaced, checkRow } from "./check-row";
import { fileAsItWas } from "./file-as-it-was";
import { beginning, refuseOtherFile } from "./other-file";
import type { RawRow, RawSheet } from "./raw-row";
import { readCsv } from "./read-csv";
import { readJson, readNdjson } from "./read-json";
import { readWorkbook } from "./read-workbook";
import type { Context, GoodRow, HeldRow, Sheet } from "./sheet";
import { UnreadableFile } from "./unreadable-file";
import { seemsTable, whichTable } from "./which-table";

/**
 * The tables of a file with their rows checked, as streams: memory does not grow with the file. The ending of the name
 * says how it is written: .csv, .xlsx, .json or .ndjson. Sheets of a workbook that are no table, as notes, are passed
 * over where another one is.
 *
 * @throws UnreadableFile where it is none of these, is empty, or its table cannot be told.
 */
export async function* readSheets(
  path: string,
  name: string,
  context: Context,
): AsyncGenerator<Sheet> {
  const read = readers[extname(name).toLowerCase()];
  if (!read)
    throw new UnreadableFile(
      name,
      "files that end in .csv, .xlsx, .json or .ndjson can be read; save it as one of these.",
    );
  const refuseChanged = await fileAsItWas(path, name);
  if (read !== readWorkbook) refuseOtherFile(await beginning(path, 512), name);
  let any = false;
  let noTable: unknown;
  for await (const raw of read(path, name)) {
    try {
      const table = whichTable(raw);
      any = true;
      yield {
        name: raw.name,
        table,
        ignored: ignored(raw, table),
        rows: new Batched(rowsOf(raw, table, context, refuseChanged)),
      };
    } catch (trouble) {
      if (!(trouble instanceof UnreadableFile) || seemsTable(raw)) throw trouble;
      noTable ??= trouble;
    } finally {
      await raw.close();
    }
  }
  if (!any)
    throw noTable ?? new UnreadableFile(name, "it is empty; export it again, or leave it out.");
}

const readers: Readonly<Record<string, (path: string, name: string) => AsyncIterable<RawSheet>>> = {
  ".csv": only(readCsv),
  ".json": only(readJson),
  ".ndjson": only(readNdjson),
  ".xlsx": readWorkbook,
};

/** A reader of files that hold one table, or nothing. */
function only(read: (path: string, name: string) => Promise<RawSheet | undefined>) {
  return async function* (path: string, name: string): AsyncGenerator<RawSheet> {
    const sheet = await read(path, name);
    if (sheet) yield sheet;
  };
}

function ignored(raw: RawSheet, table: TableName): string[] {
  const known = new Set(tables[table].columns.map((column) => column.name));
  return [...new Set(raw.header.filter((name) => name !== "" && !known.has(name)))];
}

async function* rowsOf(
  raw: RawSheet,
  table: TableName,
  context: Context,
  refuseChanged: () => Promise<void>,
): AsyncGenerator<Iterable<GoodRow | HeldRow>> {
  for await (const rows of raw.rows.batches) yield checked(rows, raw, table, context);
  await refuseChanged();
}

function* checked(
  rows: Iterable<RawRow>,
  raw: RawSheet,
  table: TableName,
  context: Context,
): Generator<GoodRow | HeldRow> {
  for (const { line, cells, troubles, misplaced, missing = 0 } of rows) {
    const place = { file: raw.name, line };
    yield misplaced
      ? checkMisplaced(table, surelyTaken(raw, table, cells, missing), place, troubles ?? [])
      : checkRow(table, cells, place, context, troubles);
  }
}

/**
 * The cells of a misplaced row that cannot be those of a column that no field takes, as a patient's name: with missing cells
 * what stands under a column may belong as many columns further on.
 */
function surelyTaken(
  { header }: RawSheet,
  table: TableName,
  cells: RawRow["cells"],
  missing: number,
): RawRow["cells"] {
  const known = new Set(tables[table].columns.map((column) => column.name));
  const firstOther = header.findIndex((name) => !known.has(name));
  if (firstOther < 0) return cells;
  const sure = new Set(header.slice(0, Math.max(0, firstOther - missing)));
  return Object.fromEntries(Object.entries(cells).filter(([name]) => sure.has(name)));
}
