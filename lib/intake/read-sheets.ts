import { extname } from "node:path";
import { tables } from "@/lib/records/tables";
import { checkMisplaced, checkRow } from "./check-row";
import type { RawSheet } from "./raw-row";
import { readCsv } from "./read-csv";
import { readJson, readNdjson } from "./read-json";
import { readWorkbook } from "./read-workbook";
import type { Context, GoodRow, HeldRow, Sheet } from "./sheet";
import { UnreadableFile } from "./unreadable-file";
import { whichTable } from "./which-table";

/**
 * The tables of a file with their rows checked, as streams: memory does not grow with the file. The ending of the name
 * says how it is written: .csv, .xlsx, .json or .ndjson.
 *
 * @throws UnreadableFile where it is none of these, is empty, or its table cannot be told.
 */
export async function* readSheets(path: string, name: string, context: Context): AsyncGenerator<Sheet> {
  const ending = extname(name).toLowerCase();
  let any = false;
  if (ending === ".xlsx") {
    const unknown: UnreadableFile[] = [];
    for await (const raw of readWorkbook(path, name)) {
      const sheet = checkedOr(raw, context, unknown);
      if (!sheet) continue;
      any = true;
      yield sheet;
    }
    // A workbook may have sheets of notes beside its tables, but not only these.
    if (!any && unknown[0]) throw unknown[0];
  } else {
    const read = { ".csv": readCsv, ".json": readJson, ".ndjson": readNdjson }[ending];
    if (!read) throw new UnreadableFile(name, "files that end in .csv, .xlsx, .json or .ndjson can be read; save it as one of these.");
    const raw = await read(path, name);
    if (raw) {
      any = true;
      yield checked(raw, context);
    }
  }
  if (!any) throw new UnreadableFile(name, "it is empty; export it again, or leave it out.");
}

function checkedOr(raw: RawSheet, context: Context, unknown: UnreadableFile[]): Sheet | undefined {
  try {
    return checked(raw, context);
  } catch (trouble) {
    if (!(trouble instanceof UnreadableFile)) throw trouble;
    unknown.push(trouble);
    return undefined;
  }
}

function checked(raw: RawSheet, context: Context): Sheet {
  const table = whichTable(raw);
  const known = new Set(tables[table].columns.map((column) => column.name));
  return { name: raw.name, table, ignored: raw.header.filter((name) => name !== "" && !known.has(name)), rows: rowsOf(raw, table, context) };
}

async function* rowsOf(raw: RawSheet, table: Sheet["table"], context: Context): AsyncGenerator<GoodRow | HeldRow> {
  for await (const { line, cells, troubles, misplaced } of raw.rows) {
    const place = { file: raw.name, line };
    yield misplaced
      ? checkMisplaced(table, cells, place, troubles ?? [])
      : checkRow(table, cells, place, context, troubles);
  }
}
