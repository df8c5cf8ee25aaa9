import type { DocumentTable } from "@/lib/views/document/document";
import { linesWithin } from "./lines-within";
import { leading, ownLeading, sizes } from "./look";

export const cell = { across: 5, down: 2.5 };

/** How wide the columns of a table are, by their shares of its width, in points. */
export function columnWidths(table: DocumentTable, width: number): number[] {
  const shares = table.columns.map((column) => column.share ?? 1);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => (share / whole) * width);
}

/** How high the head of a table is. */
export function headHeight(table: DocumentTable, widths: readonly number[]): number {
  const titles = table.columns.map((column) => column.title);
  return heightOf(titles, widths, "strong", ownLeading);
}

/** How high a row is. */
export function rowHeight(cells: readonly string[], widths: readonly number[]): number {
  return heightOf(cells, widths, "plain", leading);
}

function heightOf(
  cells: readonly string[],
  widths: readonly number[],
  face: "plain" | "strong",
  lineHeight: number,
): number {
  const size = sizes.table;
  const lines = cells.map(
    (words, place) =>
      linesWithin(words, { width: (widths[place] ?? 0) - 2 * cell.across, size, face }).length,
  );
  return Math.max(1, ...lines) * size * lineHeight + 2 * cell.down + 0.5;
}
