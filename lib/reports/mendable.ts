import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";

/**
 * The columns that may be changed in many rows alike. A patient may not: each row has its own. Of visits the practice may not either,
 * as the patient's pseudonym belongs to it.
 */
export function mendableAlike(table: TableName): Column[] {
  return tables[table].columns.filter(
    ({ name, type }) => type !== "patient" && !(table === "sessions" && name === "practice"),
  );
}

/** Words of the column a mapping can be told: not numbers and times, which it reads in the file's own notation. */
export function joinsMappings(column: Column): boolean {
  return !columnTypeHoldsNumber(column.type) && !["instant", "day", "tooth"].includes(column.type);
}

/** What a cell may hold, where it is one of few. */
export function choicesOf(column: Column): readonly string[] {
  if (column.type === "flag") return ["yes", "no"];
  return column.choices ?? [];
}
