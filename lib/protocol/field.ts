import { type Column, columnTypeHoldsNumber } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";

/** Something that is known of a unit, or of an item of a list. */
export type Field = {
  readonly name: string;
  /** How it reads in a sentence: "the working length". */
  readonly words: string;
  readonly kind: "number" | "choice" | "flag" | "text";
  /** UCUM unit of a number. */
  readonly unit?: string;
  readonly choices?: readonly string[];
};

/** A list that hangs on a unit, in an order where it has one. */
export type List = {
  readonly name: string;
  /** "the canal's deliveries" */
  readonly words: string;
  /** One item of it: "delivery". */
  readonly item: string;
  readonly fields: readonly Field[];
  /** The items have an order, so that what follows what can be asked. */
  readonly ordered: boolean;
};

/** A field that is a column of the record format, in other words where those of its column do not fit. */
export function columnField(table: TableName, name: string, words: string): Field {
  const column = tables[table].columns.find((one) => one.name === name);
  if (!column) throw new RangeError(`${table} has no column ${name}`);
  return { name, words, ...kindOf(column) };
}

function kindOf(column: Column): Pick<Field, "kind" | "unit" | "choices"> {
  if (column.type === "choice") return { kind: "choice", choices: column.choices ?? [] };
  if (column.type === "flag") return { kind: "flag" };
  if (columnTypeHoldsNumber(column.type))
    return column.unit ? { kind: "number", unit: column.unit } : { kind: "number" };
  return { kind: "text" };
}
