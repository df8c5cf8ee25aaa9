import { type TableName, tables } from "@/lib/records/tables";

/** A blank CSV file of a table: its header row (RFC 4180, so with CR LF). */
export function templateCsv(table: TableName): string {
  return `${tables[table].columns.map((column) => column.name).join(",")}\r\n`;
}

/** A CSV file of a table with one row of examples, which the checks take as it stands. */
export function exampleCsv(table: TableName): string {
  const cells = tables[table].columns.map(({ example }) =>
    /[",]/.test(example) ? `"${example.replaceAll('"', '""')}"` : example,
  );
  return `${templateCsv(table)}${cells.join(",")}\r\n`;
}
