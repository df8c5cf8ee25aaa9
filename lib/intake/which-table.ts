import { type TableName, tableNames, tables } from "@/lib/records/tables";
import type { RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";

/**
 * The table that a sheet holds: by its name where that contains one table's name as a word, else by its header row,
 * the table whose required columns are all there and that alone takes the most of the columns.
 *
 * @throws UnreadableFile where no table fits, or several do, or the header has none of the table's columns or one twice.
 */
export function whichTable(sheet: RawSheet): TableName {
  const table = tableByTitle(sheet.title) ?? tableByHeader(sheet);
  const known = tables[table].columns.map((column) => column.name);
  const has = sheet.header.filter((name) => known.includes(name));
  if (has.length === 0 && sheet.header.length > 0) {
    throw new UnreadableFile(
      sheet.name,
      `it should hold ${table}, but its header row (${shown(sheet.header)}) has none of their columns (${known.slice(0, 4).join(", ")} …); are its cells parted by commas, and is it saved in UTF-8?`,
    );
  }
  const twice = has.find((name, place) => has.indexOf(name) !== place);
  if (twice)
    throw new UnreadableFile(
      sheet.name,
      `the header row has the column ${twice} twice; remove or rename one.`,
    );
  return table;
}

/** Is a sheet meant for a table, so that it must not be passed over: by its name, or by three columns of one table. */
export function seemsTable(sheet: RawSheet): boolean {
  const header = new Set(sheet.header);
  const has = tableNames.map(
    (name) => tables[name].columns.filter((column) => header.has(column.name)).length,
  );
  return tableByTitle(sheet.title) !== undefined || Math.max(...has) >= 3;
}

/** The table that a file's or sheet's name tells, if it tells one. */
export function tableByTitle(title: string): TableName | undefined {
  const words = title.toLowerCase().split(/[^a-z]+/);
  const named = tableNames.filter((name) => words.includes(name));
  return named.length === 1 ? named[0] : undefined;
}

function tableByHeader(sheet: RawSheet): TableName {
  const header = new Set(sheet.header);
  const fitting = tableNames
    .filter((name) =>
      tables[name].columns.every((column) => !column.required || header.has(column.name)),
    )
    .map((name) => ({
      name,
      takes: tables[name].columns.filter((column) => header.has(column.name)).length,
    }));
  const most = Math.max(0, ...fitting.map((one) => one.takes));
  const best = fitting.filter((one) => one.takes === most).map((one) => one.name);
  const [only] = best;
  if (best.length === 1 && only) return only;
  if (best.length > 1) {
    throw new UnreadableFile(
      sheet.name,
      `its header fits the tables ${best.join(" and ")}; name the file after the one it holds.`,
    );
  }
  const found = shown(sheet.header);
  throw new UnreadableFile(
    sheet.name,
    `neither its name nor its header row (${found}) is that of a table. Name the file after its table (${tableNames.join(", ")}) and give the first row the columns' names.`,
  );
}

/** Header names as they are compared: trimmed and in lower case. */
export function headerOf(names: readonly string[]): string[] {
  return names.map((name) => name.trim().toLowerCase());
}

/** What is no header row may hold a patient, so it is shown only where it has a column's name in it. */
function shown(header: readonly string[]): string {
  if (!header.some((name) => columnNames.has(name))) return "no column's name";
  const text = header
    .slice(0, 8)
    .join(", ")
    .replace(/\p{Cc}/gu, "");
  return text.length > 100 ? `${text.slice(0, 100)}…` : text || "nothing";
}

const columnNames = new Set(
  tableNames.flatMap((name) => tables[name].columns.map((column) => column.name)),
);
