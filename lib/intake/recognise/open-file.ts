import type { FileLayout } from "../mapping/file-layout";
import { refuseManyColumns } from "../most-columns";
import type { RawSheet } from "../raw-row";
import { readWorkbook } from "../read-workbook";
import { separatedSheet } from "../separated-sheet";
import { headerNames } from "./header-names";
import { openJson } from "./open-json";

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
    case "json-lines":
      return openJson(path, name, layout.kind);
    case "workbook":
      return openSheet(path, name, layout);
  }
}

async function openSheet(
  path: string,
  name: string,
  { sheet, headerLine }: FileLayout,
): Promise<RawSheet | undefined> {
  for await (const one of readWorkbook(path, name, { headerLine, columns })) {
    if (sheet === undefined || one.title === sheet) return one;
    await one.close();
  }
  return undefined;
}

/** Every column from the first with a name to the last has one, as in separated text. */
function columns(cells: ReadonlyMap<number, string>, name: string): Map<number, string> {
  const first = Math.min(...cells.keys());
  const count = Math.max(...cells.keys()) - first + 1;
  refuseManyColumns(count, name);
  const texts = Array.from({ length: count }, (_, place) => cells.get(first + place) ?? "");
  return new Map(headerNames(texts).map((text, place) => [first + place, text]));
}
