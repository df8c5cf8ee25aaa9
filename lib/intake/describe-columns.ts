import type { Column } from "@/lib/records/column";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { choiceWords } from "./choice-words";
import { rangeWords } from "./range-words";

/** A column in words, for a page or a printed list. */
export type ColumnDescription = {
  readonly table: TableName;
  readonly column: string;
  readonly required: boolean;
  /** Part of what tells one row from another. */
  readonly key: boolean;
  readonly says: string;
  /** What a cell may hold: "yes or no", "a number from 0 to 100 mL". */
  readonly holds: string;
  readonly example: string;
};

/** Every column of every table, or of one, in the order of the record format. */
export function describeColumns(only?: TableName): ColumnDescription[] {
  return (only ? [only] : tableNames).flatMap((table) =>
    tables[table].columns.map((column) => ({
      table,
      column: column.name,
      required: column.required === true,
      key: column.key === true,
      says: column.says,
      holds: describeColumn(column),
      example: column.example,
    })),
  );
}

/** What a cell of a column may hold: "yes or no", "a number from 0 to 100 mL". */
export function describeColumn(column: Column): string {
  switch (column.type) {
    case "choice":
      return choiceWords(column);
    case "number":
      return `a number${rangeWords(column)}`;
    case "whole":
      return `a whole number${rangeWords(column)}`;
    case "count":
      return "yes, no or a whole number";
    case "flag":
      return "yes or no";
    case "instant":
      return "date and time, with an offset from UTC or in the practice's local time";
    case "day":
      return "a day of the calendar";
    case "canal":
      return "the name of a canal";
    case "tooth":
      return "a tooth in the notation beside it";
    case "patient":
      return "any stable reference, kept as a keyed hash only";
    case "code":
      return "a short text";
  }
}
