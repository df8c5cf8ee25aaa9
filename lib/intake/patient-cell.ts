import type { Value } from "@/lib/records/column";
import { type TableName, tables } from "@/lib/records/tables";
import type { Context } from "./sheet";

/** The patient of a row: the keyed hash, and how the reference itself is kept from going further. */
export type Patient = {
  /** A checked value as it may be kept. */
  kept(column: string, value: Value): Value;
  /** A text of the row as it may be shown or kept in a held row. */
  hidden(column: string | undefined, text: string): string;
};

/** Shorter references are found within other texts by chance. */
const shortest = 4;

/**
 * The patient's reference goes no further than here: what is kept is its keyed hash, also where another cell repeats the
 * reference, as a case named after the patient does. Undefined where the row names no patient.
 */
export function patientOf(
  table: TableName,
  cells: Readonly<Record<string, string>>,
  context: Context,
): Patient | undefined {
  const column = patientColumn[table];
  const reference = column === undefined ? undefined : cells[column]?.trim();
  if (!reference) return undefined;
  return new PatientOf(
    column,
    reference,
    context.pseudonym((cells.practice ?? "").trim(), reference),
  );
}

/** A class, as functions made anew for every row cost as much as its hash. */
class PatientOf implements Patient {
  constructor(
    private readonly column: string | undefined,
    private readonly reference: string,
    private readonly hash: string,
  ) {}

  kept(name: string, value: Value): Value {
    if (name === this.column) return this.hash;
    if (name !== "case_id" || typeof value !== "string") return value;
    return value === this.reference ? this.hash : this.within(value);
  }

  hidden(name: string | undefined, text: string): string {
    return name === this.column ? this.hash : this.within(text);
  }

  private within(text: string): string {
    const { reference, hash } = this;
    return reference.length >= shortest ? text.replaceAll(reference, hash) : text;
  }
}

const patientColumn: Partial<Record<TableName, string>> = Object.fromEntries(
  Object.values(tables).map(({ name, columns }) => [
    name,
    columns.find((column) => column.type === "patient")?.name,
  ]),
);
