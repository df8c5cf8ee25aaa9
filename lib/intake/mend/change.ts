/**
 * What a mend does to one column of a row, in words of the record format.
 *
 * - `to` alone: the cell becomes this, whatever was there; with `from` only where the whole cell is that, whatever its case and
 *   blanks (an empty `from` is the empty cell).
 * - `none`: not recorded.
 * - `point`: the comma of a decimal number becomes a point.
 */
export type Change =
  | { readonly to: string; readonly from?: string }
  | { readonly none: true; readonly from?: string }
  | { readonly point: true };

/** What a mend does, by column. */
export type Changes = Readonly<Record<string, Change>>;
