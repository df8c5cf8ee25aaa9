import { type TableName, tableNames } from "@/lib/records/tables";

/** A row as a record file would hold it; a cell that is not there was not recorded. */
export type Row = { readonly [column: string]: string | number | undefined };
export type Rows = Record<TableName, Row[]>;

export function noRows(): Rows {
  return Object.fromEntries(tableNames.map((name) => [name, []])) as unknown as Rows;
}
