import type { FileLayout } from "../mapping/file-layout";
import type { RawRow, RawSheet } from "../raw-row";
import { readJson, readNdjson } from "../read-json";
import { readWorkbook } from "../read-workbook";
import { separatedSheet } from "../separated-sheet";
import { headerNames } from "./header-names";

/**
 * The rows of a file of another system under a layout, as a stream. Columns have the names that the file gives them (see
 * header-names). Undefined where the file is empty, or the workbook has no such sheet.
 *
 * @throws UnreadableFile in one sentence where it is not what the layout says.
 */
export async function openFile(
  path: string,
  name: string,
  layout: FileLayout,
): Promise<RawSheet | undefined> {
  switch (layout.kind) {
    case "separated":
      return separatedSheet(path, name, {
        cut: layout,
        headerLine: layout.headerLine,
        header: headerNames,
        unreadable: (line) =>
          `line ${line} should hold the names of the columns, and cannot be read; is it the right line, and the right encoding?`,
        remedy: (columns) =>
          `the header has ${columns}; a separator is missing or too many in this line`,
        openEnded: true,
      });
    case "json":
      return named(await readJson(path, name));
    case "json-lines":
      return named(await readNdjson(path, name));
    case "workbook":
      return openWorkbook(path, name, layout);
  }
}

async function openWorkbook(path: string, name: string, { sheet, headerLine }: FileLayout) {
  for await (const one of readWorkbook(path, name, headerLine)) {
    if (sheet === undefined || one.title === sheet) return named(one);
    await one.close();
  }
  return undefined;
}

/** The readers give names in lower case; they are compared so, too. */
function named(sheet: RawSheet | undefined): RawSheet | undefined {
  if (!sheet) return undefined;
  const header = headerNames(sheet.header);
  if (header.every((name, place) => name === sheet.header[place])) return sheet;
  const names = new Map(sheet.header.map((name, place) => [name, header[place] ?? name]));
  return { ...sheet, header, rows: renamed(sheet.rows, names) };
}

async function* renamed(
  rows: AsyncIterable<RawRow>,
  names: ReadonlyMap<string, string>,
): AsyncGenerator<RawRow> {
  for await (const row of rows) {
    const cells = Object.entries(row.cells).map(([name, text]) => [names.get(name) ?? name, text]);
    yield { ...row, cells: Object.fromEntries(cells) };
  }
}
