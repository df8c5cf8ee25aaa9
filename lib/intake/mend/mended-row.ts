import type { Place, Reason } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import { checkRow } from "../check-row";
import type { Trouble } from "../raw-row";
import type { Context, GoodRow, HeldRow, Match } from "../sheet";
import { applyChanges } from "./apply-changes";
import type { Changes } from "./change";
import { matchIn } from "./match-cells";

/** A held row as a mend finds it. */
export type RowToMend = {
  readonly table: TableName;
  readonly place: Place;
  /** As the record format writes them, the patient hashed already. */
  readonly cells: Readonly<Record<string, string>>;
  readonly reasons: readonly Reason[];
  /** Was it the checks that held it, and not its relation to other rows. */
  readonly byChecks: boolean;
};

/**
 * A held row with changes, checked again. Undefined where no change concerns it.
 *
 * What the checks alone do not find again (a number that was not in the file's notation, a cell that could not be told from the next)
 * stays a trouble until a change speaks of its column: the cell is not in the record format's unit or place.
 *
 * @param context its `pseudonym` is not asked for patients: they are hashed already
 */
export function mendedRow(
  row: RowToMend,
  changes: Changes,
  context: Context,
  how: {
    /** Somebody had every cell of the row before them. */
    readonly whole?: boolean;
    /** What else stands against the row as it becomes. */
    readonly against?: (cells: RowToMend["cells"]) => readonly Trouble[];
  } = {},
):
  | { readonly cells: Readonly<Record<string, string>>; readonly row: GoodRow | HeldRow }
  | undefined {
  const { cells, spokenOf } = applyChanges(row.cells, changes);
  if (spokenOf.size === 0) return undefined;
  const asIs: Context = { ...context, pseudonym: (_, hash) => hash };
  const left = row.byChecks
    ? troublesLeft(row, asIs).filter(({ column }) =>
        column === undefined ? !how.whole : !spokenOf.has(column),
      )
    : [];
  const troubles = [...left, ...(how.against?.(cells) ?? [])];
  return {
    cells,
    row: checkRow(row.table, cells, row.place, asIs, troubles, matchOf(cells, troubles)),
  };
}

/** Why the row is held, as far as its cells do not show it. */
function troublesLeft(row: RowToMend, context: Context): Trouble[] {
  const again = checkRow(row.table, row.cells, row.place, context, [], matchIn(row.cells));
  const shown = new Set(again.verdict === "held" ? again.reasons.map(({ column }) => column) : []);
  return row.reasons
    .filter(({ column }) => !shown.has(column))
    .map(({ column, found, remedy }) => ({ ...(column ? { column } : {}), found, remedy }));
}

/** A row that names its visit needs none found for it. */
function matchOf(cells: RowToMend["cells"], troubles: readonly Trouble[]): Match | undefined {
  const lost = cells.session_id || troubles.some(({ column }) => column === "session_id");
  const match = lost ? undefined : matchIn(cells);
  return match && cells.practice ? { ...match, practice: cells.practice } : match;
}
