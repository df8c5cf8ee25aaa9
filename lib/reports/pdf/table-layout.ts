import type { DocumentTable } from "@/lib/views/document/document";
import { leading, ownLeading, sizes } from "./look";
import { spread } from "./spread";

export const cell = { across: 5, down: 2.5 };

/** A table with its columns' widths, its cells' ends of lines and its rows' heights, all in points. */
export type TableLayout = {
  readonly widths: readonly number[];
  readonly head: LaidRow;
  readonly rows: readonly (LaidRow & { readonly id: string })[];
};

type LaidRow = { readonly cells: readonly string[]; readonly height: number };

/** Lays a table out over a width, by the columns' shares of it. */
export function tableLayout(table: DocumentTable, width: number): TableLayout {
  const shares = table.columns.map((column) => column.share ?? 1);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const widths = shares.map((share) => (share / whole) * width);
  return {
    widths,
    head: laid(
      table.columns.map((column) => column.title),
      widths,
      "strong",
    ),
    rows: table.rows.map((row) => ({ id: row.id, ...laid(row.cells, widths, "plain") })),
  };
}

function laid(
  cells: readonly string[],
  widths: readonly number[],
  face: "plain" | "strong",
): LaidRow {
  const size = sizes.table;
  const set = widths.map((width, place) =>
    spread(cells[place] ?? "", { width: width - 2 * cell.across, size, face }),
  );
  const lines = Math.max(1, ...set.map((words) => words.split("\n").length));
  return {
    cells: set,
    height: lines * size * (face === "strong" ? ownLeading : leading) + 2 * cell.down + 0.5,
  };
}
