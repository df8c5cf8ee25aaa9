import { Text, View } from "@react-pdf/renderer";
import { type FontFace, faceStyle } from "./font";
import { linesWithin } from "./lines-within";
import { colours, leading } from "./look";
import type { Piece } from "./piece";

/** Words within a column of a row. */
export type RowWords = {
  readonly words: string;
  readonly x: number;
  readonly width: number;
  readonly size: number;
  readonly face?: FontFace;
  readonly colour?: string;
  readonly right?: boolean;
};

export type Row = {
  readonly columns: readonly RowWords[];
  /** Free above and below the words. */
  readonly down?: number;
  /** Under the row, over this width. */
  readonly rule?: { readonly colour: string; readonly thickness: number; readonly width: number };
  readonly wash?: boolean;
  /** Words stand on the last line, as in the head of a table. */
  readonly low?: boolean;
  /** A row of more lines than this is divided between lines. */
  readonly wholeUpTo?: number;
};

type LaidWords = RowWords & { readonly lines: readonly string[] };

/** A row as one piece, or as several where it has too many lines to stay whole. */
export function rowPieces(row: Row): Piece[] {
  const columns = row.columns.map((column) => ({
    ...column,
    lines: linesWithin(column.words, column),
  }));
  const most = Math.max(1, ...columns.map((column) => column.lines.length));
  if (most <= (row.wholeUpTo ?? 24)) return [piece(row, columns)];
  return Array.from({ length: most }, (_, place) => ({
    ...piece(
      { ...row, down: 0, ...(place < most - 1 ? { rule: undefined } : {}) },
      columns.map((column) => ({ ...column, lines: column.lines.slice(place, place + 1) })),
    ),
    // No line alone at the end of a page or at the top of one.
    stays: place === 0 || place === most - 2,
  }));
}

function piece(row: Row, columns: readonly LaidWords[]): Piece {
  const down = row.down ?? 0;
  const inner = Math.max(...columns.map((column) => heightOf(column)));
  const height = inner + 2 * down + (row.rule?.thickness ?? 0);
  return {
    height,
    drawing: (
      <View style={{ height, ...ruleStyle(row) }}>
        {columns.flatMap((column, place) =>
          column.lines.map((line, below) => (
            <Text
              // biome-ignore lint/suspicious/noArrayIndexKey: columns and lines keep their order.
              key={`${place} ${below}`}
              style={{
                ...faceStyle(column.face ?? "plain"),
                fontSize: column.size,
                lineHeight: leading,
                color: column.colour ?? colours.ink,
                position: "absolute",
                top:
                  down + (row.low ? inner - heightOf(column) : 0) + below * column.size * leading,
                // A hair more than what was measured, on the free side.
                left: column.right ? column.x - 2 : column.x,
                width: column.width + 2,
                textAlign: column.right ? "right" : "left",
              }}
            >
              {line}
            </Text>
          )),
        )}
      </View>
    ),
  };
}

function heightOf(column: LaidWords): number {
  return column.lines.length * column.size * leading;
}

function ruleStyle({ rule, wash }: Row) {
  return {
    ...(rule
      ? { width: rule.width, borderBottomWidth: rule.thickness, borderBottomColor: rule.colour }
      : {}),
    ...(wash ? { backgroundColor: colours.wash } : {}),
  };
}
