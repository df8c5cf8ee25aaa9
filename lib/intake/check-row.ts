import type { Value } from "@/lib/records/column";
import type { Place } from "@/lib/records/reason";
import { type TableName, tables } from "@/lib/records/tables";
import { checkCell } from "./check-cell";
import { checkTooth } from "./check-tooth";
import { type Cells, type Found, heldRow } from "./held-row";
import type { When } from "./instant";
import { patientOf } from "./patient-cell";
import { isProblem } from "./problem";
import { rowProblems } from "./row-rules";
import type { Context, GoodRow, HeldRow, Match } from "./sheet";

/**
 * Checks a row against the columns of its table and the rules between them; every problem of the row is told.
 *
 * @param cells by column name, as read; names that the table does not have are passed over.
 * @param troubles what the reader found wrong with the row already: with one it is held, and its column is not checked again.
 * @param match finds the visit of a row that names none.
 */
export function checkRow(
  table: TableName,
  cells: Cells,
  place: Place,
  context: Context,
  troubles: readonly Found[] = [],
  match?: Match,
): GoodRow | HeldRow {
  const values: Record<string, Value | undefined> = {};
  const found =
    troubles.length === 0
      ? []
      : troubles.filter(({ column }) => column === undefined || names(table).has(column));
  const told = found.length === 0 ? nothing : new Set(found.flatMap(({ column }) => column ?? []));
  const patient = patientOf(table, cells, context);
  const cellContext = new OfRow(cells, context);
  for (const column of tables[table].columns) {
    if (told.has(column.name)) continue;
    const text = cells[column.name]?.trim();
    if (!text) {
      if (column.required && !(match && column.name === "session_id"))
        found.push({
          column: column.name,
          found: "",
          remedy: `it is required: ${lowered(column.says)}`,
        });
      continue;
    }
    const checked =
      column.type === "tooth" ? checkTooth(text, cells) : checkCell(column, text, cellContext);
    if (isProblem(checked)) found.push({ column: column.name, ...checked });
    else values[column.name] = patient ? patient.kept(column.name, checked) : checked;
  }
  const between = rowProblems(table, values, cells);
  if (between.length > 0) found.push(...between);
  if (found.length === 0)
    return { verdict: "good", line: place.line, values, ...(match ? { match } : {}) };
  return heldRow(table, place, cells, found, values, patient, match);
}

/** A class, as a function made anew for every row costs as much as checking some of its cells. */
class OfRow implements When {
  readonly now: Date;

  constructor(
    private readonly cells: Cells,
    private readonly context: Context,
  ) {
    this.now = context.now;
  }

  zone(): string | undefined {
    return this.context.zoneOf(this.cells.practice?.trim() || undefined);
  }
}

/** A row whose cells may stand under other columns' names. */
export function checkMisplaced(
  table: TableName,
  cells: Cells,
  place: Place,
  troubles: readonly Found[],
): HeldRow {
  // Any cell might be the patient, so nothing of the row is kept.
  if (tables[table].columns.some((column) => column.type === "patient"))
    return heldRow(table, place, {}, troubles, {});
  const values: Record<string, Value | undefined> = {};
  for (const column of tables[table].columns) {
    const text = cells[column.name]?.trim();
    // The first cells are most likely in their places, and tell where the held row counts.
    if (!text || !placing.has(column.name)) continue;
    const checked = checkCell(column, text, { zone: () => undefined, now: new Date(0) });
    if (!isProblem(checked)) values[column.name] = checked;
  }
  return heldRow(table, place, cells, troubles, values);
}

/** What is wrong in a column that no field takes is no matter. */
function names(table: TableName): Set<string> {
  return new Set(tables[table].columns.map((column) => column.name));
}

const nothing: ReadonlySet<string> = new Set();

const placing = new Set(["practice", "session_id", "canal"]);

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1).replace(/\.$/, "");
}
