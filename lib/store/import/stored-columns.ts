import type { Column, ColumnType } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";

/** A column as PostgreSQL keeps it. `key` columns tell rows apart; the empty text stands for "whole tooth" or "no device". */
export type StoredColumn = {
  readonly name: string;
  readonly type: string;
  readonly key: boolean;
  readonly record: Column;
  /** Its bit in a row's `fields`. */
  readonly bit: number;
};

/** The columns of a record table apart from those that place the row (session_id, and practice of a visit's rows). */
export function storedColumns(table: TableName): StoredColumn[] {
  return tables[table].columns
    .map((record, place) => ({
      name: record.name,
      type: sqlTypes[record.type],
      key: record.key === true,
      record,
      bit: 2 ** place,
    }))
    .filter((column) => !placed(table).includes(column.name));
}

/** The key in the database: the visit's id stands for practice and session_id. */
export function storedKey(table: TableName): string[] {
  if (table === "sessions") return ["practice", "session_id"];
  const own = storedColumns(table).filter((column) => column.key);
  return [...(hangsOnVisit(table) ? ["visit_id"] : []), ...own.map((column) => column.name)];
}

/** Does a row of this table belong to a visit. */
export function hangsOnVisit(table: TableName): boolean {
  return tables[table].parent !== undefined;
}

/** `"a", "b"` */
export function list(names: readonly string[], of = ""): string {
  return names.map((name) => `${of}"${name}"`).join(", ");
}

function placed(table: TableName): string[] {
  return hangsOnVisit(table) ? ["session_id", "practice"] : [];
}

const sqlTypes: Record<ColumnType, string> = {
  code: "text",
  choice: "text",
  flag: "boolean",
  number: "double precision",
  whole: "integer",
  count: "integer",
  instant: "timestamptz",
  day: "date",
  canal: "text",
  tooth: "text",
  patient: "text",
};
