import { type TableName, tables } from "@/lib/records/tables";

type Cells = Readonly<Record<string, string | null | undefined>>;

/** The header row of a table's record file. */
export function headerLine(table: TableName): string {
  return line(tables[table].columns.map((column) => column.name));
}

/** One row of a record file by RFC 4180. A ragged one has a cell too many, so that it is held where it is read. */
export function recordLine(table: TableName, cells: Cells, ragged = false): string {
  const written = tables[table].columns.map((column) => fewLines(cells[column.name] ?? ""));
  return line(ragged ? [...written, "a cell too many"] : written);
}

function line(cells: readonly string[]): string {
  return `${cells.map(quoted).join(",")}\r\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** A cell over more lines is taken for a quote that is never closed (lib/intake/csv-rows); no code or number has any. */
const mostLines = 20;

function fewLines(cell: string): string {
  const lines = cell.split(/\r\n|\r|\n/);
  return lines.length <= mostLines
    ? cell
    : [...lines.slice(0, mostLines), lines.slice(mostLines).join(" ")].join("\n");
}
