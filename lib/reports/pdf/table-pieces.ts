import type { DocumentTable } from "@/lib/views/document/document";
import { colours, sizes } from "./look";
import type { Piece } from "./piece";
import { staying } from "./pieces-with";
import { type Row, rowPieces } from "./row-pieces";
import { paragraph } from "./word-pieces";

/** A table: its head stands again on every page, and a row stays whole. */
export function tablePieces(table: DocumentTable, width: number, labelled: boolean): Piece[] {
  const { columns, rows, label } = table;
  if (columns.length === 0) return [];
  const widths = columnWidths(table, width);
  const head = rowPieces({
    columns: cells(
      table,
      widths,
      columns.map((column) => column.title),
      "strong",
    ),
    ...{ down, wash: true, low: true, wholeUpTo: Number.POSITIVE_INFINITY },
    rule: { colour: colours.ruleStrong, thickness: 0.75, width },
  });
  const body = rows.flatMap((row, place) => {
    const pieces = rowPieces({
      columns: cells(table, widths, row.cells, "plain"),
      down,
      rule: { colour: colours.rule, thickness: 0.5, width },
    });
    // Two rows at least under a head.
    const kept = place === 0 || place === rows.length - 2;
    return kept && place < rows.length - 1 && pieces.length === 1 ? staying(pieces) : pieces;
  });
  const said = labelled
    ? paragraph(label, { width, size: sizes.small, colour: colours.inkSoft })
    : [];
  return [
    ...staying(said),
    ...(said.length > 0
      ? head.map((piece) => ({ ...piece, above: 3, stays: true }))
      : staying(head)),
    ...body.map((piece) => ({ ...piece, head: head[0] })),
  ];
}

const down = 2.5;
const across = 5;

function columnWidths(table: DocumentTable, width: number): number[] {
  const shares = table.columns.map((column) => column.share ?? 1);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => (share / whole) * width);
}

function cells(
  table: DocumentTable,
  widths: readonly number[],
  words: readonly string[],
  face: "plain" | "strong",
): Row["columns"] {
  let x = 0;
  return table.columns.map((column, place) => {
    const width = widths[place] ?? 0;
    const cell = { words: words[place] ?? "", x: x + across, width: width - 2 * across };
    x += width;
    return { ...cell, size: sizes.table, face, right: column.numeric };
  });
}
