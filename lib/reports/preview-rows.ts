import type { GoodRow, HeldRow } from "@/lib/intake/sheet";
import { type TableName, tables } from "@/lib/records/tables";
import { moment } from "@/lib/views/day";
import { fieldWords } from "@/lib/views/mapping/field-words";
import type { PreviewRow, PreviewTable } from "@/lib/views/mapping/preview-view";
import { count } from "@/lib/views/quantity";

export type ShownRow = GoodRow | HeldRow;
type Cells = Readonly<Record<string, unknown>>;

const most = 10;
/** Of the rows after those, so many that would be held are shown, too. */
const mostHeldAfter = 5;
const firstValues = 3;

/** Rows of a table as the preview shows them: those that say the same one after the other are one; no patient is shown. */
export function shownRows(
  table: TableName,
  fields: readonly string[],
  rows: readonly ShownRow[],
  zoneOf: (practice: string | undefined) => string,
): Pick<PreviewTable, "rows" | "made" | "held" | "firsts"> {
  const shown: { cells: string[]; first: number; last: number; held: PreviewRow["held"] }[] = [];
  const firsts: Record<string, string[]> = {};
  for (const row of rows) {
    const cells = cellsOf(table, fields, row, zoneOf);
    for (const [place, name] of fields.entries()) addFirst(firsts, name, cells[place] ?? "");
    const before = shown.at(-1);
    if (before && row.verdict === "good" && sameCells(before.cells, cells)) before.last = row.line;
    else shown.push({ cells, first: row.line, last: row.line, held: heldOf(row) });
  }
  return {
    firsts,
    made: count(rows.length),
    held: count(rows.filter(({ verdict }) => verdict === "held").length),
    rows: firstAndHeld(shown).map(({ cells, first, last, held }) => ({
      cells,
      held,
      lines: first === last ? count(first) : `${count(first)} to ${count(last)}`,
    })),
  };
}

function cellsOf(
  table: TableName,
  fields: readonly string[],
  row: ShownRow,
  zoneOf: (practice: string | undefined) => string,
): string[] {
  const cells: Cells = row.verdict === "good" ? row.values : row.raw;
  const practice = typeof cells.practice === "string" ? cells.practice : undefined;
  return fields.map((name) => {
    const value = cells[name];
    if (value === undefined || value === "")
      return name === "session_id" && row.verdict === "good" ? "found by time" : "";
    const type = tables[table].columns.find((column) => column.name === name)?.type;
    if (type === "patient") return "not shown";
    if (type === "instant" && row.verdict === "good")
      return moment(new Date(String(value)), zoneOf(practice));
    return typeof value === "boolean" ? (value ? "yes" : "no") : String(value).slice(0, 200);
  });
}

function firstAndHeld<Row extends { readonly held: PreviewRow["held"] }>(
  rows: readonly Row[],
): Row[] {
  const later = rows.slice(most).filter(({ held }) => held.length > 0);
  return [...rows.slice(0, most), ...later.slice(0, mostHeldAfter)];
}

function heldOf(row: ShownRow): PreviewRow["held"] {
  if (row.verdict === "good") return [];
  return row.reasons.map(({ column, remedy }) => ({
    field: column === undefined ? "The row" : fieldWords(column),
    says: remedy,
  }));
}

function addFirst(firsts: Record<string, string[]>, name: string, value: string): void {
  const before = firsts[name] ?? [];
  if (value !== "" && before.length < firstValues && !before.includes(value))
    firsts[name] = [...before, value];
}

function sameCells(one: readonly string[], other: readonly string[]): boolean {
  return one.every((cell, place) => cell === other[place]);
}
