import type { Values } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import { cellWords, columnWords } from "./record-words";

/** One field of two versions of a row. */
export type FieldDifference = {
  readonly column: string;
  readonly old: string;
  readonly newer: string;
};

/** The fields in which a newer version says something else, in the order of the format's columns; never a patient. */
export function fieldDifferences(
  table: TableName,
  old: Values,
  newer: Values,
  zone: string,
): FieldDifference[] {
  return tables[table].columns
    .filter((column) => !column.key && newer[column.name] !== undefined)
    .filter((column) => !same(column.type, old[column.name], newer[column.name]))
    .map((column) => {
      const words = (values: Values) =>
        values[column.name] === undefined
          ? "not recorded"
          : column.type === "patient"
            ? values === newer
              ? "another patient"
              : "one patient"
            : cellWords(column, values[column.name], zone);
      return { column: columnWords(column), old: words(old), newer: words(newer) };
    });
}

/** The recorded fields that a newer version does not say, and which therefore stay. */
export function fieldsKept(table: TableName, old: Values, newer: Values, zone: string): string[] {
  return tables[table].columns
    .filter((column) => !column.key && column.name !== "practice" && column.type !== "patient")
    .filter((column) => old[column.name] !== undefined && newer[column.name] === undefined)
    .map((column) => `${columnWords(column)} ${cellWords(column, old[column.name], zone)}`);
}

/** "volume was 4.5 mL, now 5 mL; duration was not recorded, now 60 s" */
export function differenceSentence(differences: readonly FieldDifference[]): string {
  return differences
    .map(({ column, old, newer }) => `${column} was ${old}, now ${newer}`)
    .join("; ");
}

function same(type: string, one: Values[string], other: Values[string]): boolean {
  if (type === "instant" && one !== undefined && other !== undefined)
    return Date.parse(String(one)) === Date.parse(String(other));
  return one === other;
}
