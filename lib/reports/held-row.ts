import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { describeColumn } from "@/lib/intake/describe-columns";
import { nearestChoice } from "@/lib/intake/mend/nearest-choice";
import type { Column } from "@/lib/records/column";
import type { Reason } from "@/lib/records/reason";
import { tables } from "@/lib/records/tables";
import { type BenchRow, benchRowOf } from "@/lib/store/mend/bench-rows";
import { type KnownCodes, knownCodes } from "@/lib/store/mend/known-codes";
import { mendsOfRow } from "@/lib/store/mend/mends";
import { practicesWithin } from "@/lib/store/records/practices";
import { type HeldLine, heldLine } from "@/lib/views/held-lines";
import { type MendLine, mendLine } from "@/lib/views/mend-lines";
import { heldCells } from "./held-cells";
import { choicesOf } from "./mendable";

export type HeldRowPage = {
  readonly row: HeldLine;
  readonly state: BenchRow["state"];
  /** The cells as they stand now; empty where the row is held no longer. */
  readonly fields: readonly CellField[];
  /** What was done to it, oldest first. */
  readonly acts: readonly MendLine[];
};

/** One cell of a row to be mended. */
export type CellField = {
  readonly name: string;
  readonly column: string;
  readonly value: string;
  readonly hint: string;
  /** What is wrong with it now; empty where nothing is. */
  readonly wrong: string;
  readonly options: readonly { readonly value: string; readonly words: string }[] | null;
  readonly required: boolean;
  /** The cell is never shown. */
  readonly patient: boolean;
};

/** One held row, to be mended; null where there is none. @throws Refused */
export async function heldRowPage(viewer: Viewer, id: string): Promise<HeldRowPage | null> {
  const reach = recordsReach(viewer);
  const row = await heldRowWithin(reach, id);
  if (!row) return null;
  const cells = heldCells(row);
  const [acts, practices, codes] = await Promise.all([
    mendsOfRow(reach, row.id),
    practicesWithin(reach),
    knownCodes(reach, row.practice, cells.session_id ?? null),
  ]);
  return {
    row: heldLine(row),
    state: row.state,
    fields:
      row.state === "held"
        ? tables[row.table].columns.map((column) => field(column, cells, row.reasons, codes))
        : [],
    acts: acts.map((act) => mendLine(act, practices[0]?.zone ?? "UTC")),
  };
}

/** A held row by its number, as it stands in an address. */
export async function heldRowWithin(reach: RecordsReach, id: string): Promise<BenchRow | null> {
  return /^\d{1,18}$/.test(id) ? benchRowOf(reach, id) : null;
}

function field(
  column: Column,
  cells: Readonly<Record<string, string>>,
  reasons: readonly Reason[],
  codes: KnownCodes,
): CellField {
  const { name, required = false, unit } = column;
  const patient = column.type === "patient";
  const value = patient ? "" : (cells[name] ?? "");
  const choices = choicesOf(column);
  const wrong = reasons.filter((reason) => reason.column === name);
  const known = (codes as Readonly<Record<string, readonly string[]>>)[name] ?? [];
  const suggestion =
    wrong.length > 0 && nearestChoice(name, value, choices.length > 0 ? choices : known);
  const hints = patient
    ? [cells[name] ? "Kept as a pseudonym and not shown; leave it empty to keep it." : column.says]
    : [
        choices.length > 0 ? column.says : `${column.says} ${sentence(describeColumn(column))}`,
        unit ? `In ${unit} (UCUM).` : "",
        known.length > 0 ? `Known: ${known.slice(0, 30).join(", ")}.` : "",
        suggestion ? `Most likely “${suggestion}”.` : "",
      ];
  return {
    name: cellName(name),
    column: name,
    value,
    hint: hints.filter(Boolean).join(" "),
    wrong: wrong.map(({ remedy }) => sentence(remedy)).join(" "),
    options: choices.length > 0 && !column.alsoOwn ? options(choices, value, required) : null,
    required,
    patient,
  };
}

/** How the form calls the cell of a column. */
export function cellName(column: string): string {
  return `cell-${column}`;
}

function options(choices: readonly string[], value: string, required: boolean) {
  const other =
    value !== "" && !choices.includes(value) ? [{ value, words: `“${value}” as it is` }] : [];
  return [
    { value: "", words: required ? "Choose" : "Not recorded" },
    ...other,
    ...choices.map((choice) => ({ value: choice, words: choice })),
  ];
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;
}
