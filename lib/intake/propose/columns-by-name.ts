import { canalName } from "@/lib/records/canal-name";
import { columnTypeHoldsNumber } from "@/lib/records/column";
import type { TableName } from "@/lib/records/tables";
import { fieldOf } from "../mapping/field-of";
import type { ColumnProfile } from "../recognise/recognised";
import { choiceFor, tickOf } from "./choice-synonyms";
import { columnNames, comparable } from "./column-names";
import { clockOf, nearlyAll } from "./propose-feed";
import { unitInCells } from "./propose-words";

export type ColumnsByField = ReadonlyMap<string, ColumnProfile>;

/** The column of each field by its name, where its contents could be the field's; a column feeds one field of a table. */
export function columnsByName(
  table: TableName,
  fields: readonly string[],
  columns: readonly ColumnProfile[],
): ColumnsByField {
  const found = new Map<string, ColumnProfile>();
  const taken = new Set<ColumnProfile>();
  for (const field of fields) {
    const fitting = columns.find(
      (column) =>
        !taken.has(column) &&
        columnNames[field]?.test(comparable(column.name)) &&
        couldFeed(table, field, column),
    );
    if (!fitting) continue;
    found.set(field, fitting);
    taken.add(fitting);
  }
  return found;
}

/** Contents decide over a name: a column of days is no length of time, whatever it is called. */
function couldFeed(table: TableName, name: string, column: ColumnProfile): boolean {
  const field = fieldOf(table, name);
  if (!field) return false;
  if (field.type === "instant" || field.type === "day") return clockOf(column) !== undefined;
  if (column.cells === column.empty) return true;
  if (field.type === "tooth")
    return Object.values(column.fits.tooth).some((n) => nearlyAll(n, column));
  if (field.type === "canal")
    return nearlyAll(
      counted(
        column,
        (text) => canalName(text) !== undefined || choiceFor("canal", text) !== undefined,
      ),
      column,
    );
  if (clockOf(column) !== undefined && column.fits.number === 0) return false;
  if (!columnTypeHoldsNumber(field.type)) return true;
  const { number, minutesSeconds, hoursMinutesSeconds, isoDuration } = column.fits;
  const times = field.unit === "s" ? Math.max(minutesSeconds, hoursMinutesSeconds, isoDuration) : 0;
  const ticks = field.type === "count" ? counted(column, (text) => tickOf(text) !== undefined) : 0;
  return (
    [number, times, ticks].some((fits) => nearlyAll(fits, column)) ||
    unitInCells(field, column) !== undefined
  );
}

function counted({ words }: ColumnProfile, fits: (text: string) => boolean): number {
  return words.reduce((sum, { text, count }) => sum + (fits(text) ? count : 0), 0);
}
