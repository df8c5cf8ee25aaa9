import type { RecordsReach } from "@/lib/access/reach";
import { nearestChoice } from "@/lib/intake/mend/nearest-choice";
import { columnTypeHoldsNumber } from "@/lib/records/column";
import type { TableName } from "@/lib/records/tables";
import type { BenchRow } from "@/lib/store/mend/bench-rows";
import type { HeldAsked } from "@/lib/store/mend/held-asked";
import { knownCodes } from "@/lib/store/mend/known-codes";
import { foundWords } from "@/lib/views/bench-groups";
import { count } from "@/lib/views/quantity";
import { choicesOf, mendableAlike } from "./mendable";

/** How many rows alike can be mended. */
export type MendForm = {
  readonly table: TableName;
  /** Fields that say which rows. */
  readonly hidden: Readonly<Record<string, string>>;
  /** "Read “bleech” in irrigant as": the column that the reason is about; null where one is to be chosen. */
  readonly column: string | null;
  readonly label: string;
  readonly columns: readonly { readonly value: string; readonly words: string }[];
  /** What the cell may be, where it is one of few. */
  readonly choices: readonly string[];
  /** Codes that are known; others may be typed. */
  readonly known: readonly string[];
  /** What the word most likely means; it is only offered. */
  readonly suggestion: string | null;
  readonly optional: boolean;
  readonly number: boolean;
  readonly rows: string;
};

/** The form that mends the rows found. */
export async function mendForm(
  reach: RecordsReach,
  asked: HeldAsked & { readonly table: TableName },
  found: { readonly count: number; readonly rows: readonly BenchRow[] },
): Promise<MendForm | null> {
  const columns = mendableAlike(asked.table);
  const field = columns.find(({ name }) => name === asked.column);
  // What is wrong with a patient is wrong with each by itself, and a row cut wrongly has no column.
  if (asked.column && !field) return null;
  const choices = field ? choicesOf(field) : [];
  const codes = await knownCodes(reach, null, null);
  const known = field && field.name in codes ? codes[field.name as keyof typeof codes] : [];
  const { table, kind, column, found: word, importId } = asked;
  const hidden = { table, kind, column, found: word, import: importId?.toString() };
  return {
    table,
    hidden: Object.fromEntries(
      Object.entries(hidden).flatMap(([name, value]) =>
        value === undefined ? [] : [[name, value]],
      ),
    ),
    column: field?.name ?? null,
    label: field ? labelOf(field.name, word) : "The cell becomes",
    columns: columns.map(({ name }) => ({ value: name, words: name })),
    choices,
    known,
    suggestion:
      (field && word && nearestChoice(field.name, word, choices.length > 0 ? choices : known)) ||
      null,
    optional: field ? !field.required : true,
    number: field ? columnTypeHoldsNumber(field.type) : true,
    rows: `${count(found.count)} ${found.count === 1 ? "row" : "rows"}`,
  };
}

function labelOf(column: string, found: string | undefined): string {
  return found === undefined
    ? `In ${column}, the cell becomes`
    : `Where ${column} has ${foundWords("check", found)}, it becomes`;
}
