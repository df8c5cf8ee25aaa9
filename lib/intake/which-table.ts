import { type TableName, tableNames, tables } from "@/lib/records/tables";
import type { RawSheet } from "./raw-row";
import { UnreadableFile } from "./unreadable-file";

/**
 * The table that a sheet holds: by its name where that contains one table's name as a word, else by its header row,
 * the table whose required columns are all there and that alone takes the most of the columns.
 *
 * @throws UnreadableFile where no table fits, or several do.
 */
export function whichTable(sheet: RawSheet): TableName {
  return tableByTitle(sheet.title) ?? tableByHeader(sheet);
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
    .filter((name) => tables[name].columns.every((column) => !column.required || header.has(column.name)))
    .map((name) => ({ name, takes: tables[name].columns.filter((column) => header.has(column.name)).length }));
  const most = Math.max(0, ...fitting.map((one) => one.takes));
  const best = fitting.filter((one) => one.takes === most).map((one) => one.name);
  const [only] = best;
  if (best.length === 1 && only) return only;
  if (best.length > 1) {
    throw new UnreadableFile(sheet.name, `its header fits the tables ${best.join(" and ")}; name the file after the one it holds.`);
  }
  const found = sheet.header.slice(0, 8).join(", ") || "nothing";
  throw new UnreadableFile(
    sheet.name,
    `neither its name nor its header row (${found}) is that of a table. Name the file after its table (${tableNames.join(", ")}) and give the first row the columns' names.`,
  );
}

/** The header names a table takes, trimmed and in lower case; a repeated one is refused. */
export function headerOf(names: readonly string[], file: string): string[] {
  const header = names.map((name) => name.trim().toLowerCase());
  const twice = header.find((name, place) => name !== "" && header.indexOf(name) !== place);
  if (twice) throw new UnreadableFile(file, `the header row has the column "${twice}" twice; remove or rename one.`);
  return header;
}
