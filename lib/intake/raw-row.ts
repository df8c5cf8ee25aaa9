import type { Batched } from "./batched";
import type { Problem } from "./problem";

/** What keeps a row from being read as it stands. */
export type Trouble = { readonly column?: string } & Problem;

/**
 * A row as a reader gives it: its cells by column name. With `troubles` it is held whatever its cells hold; its cells are
 * then there as far as they could be told. `misplaced`: a cell may stand under another column's name; `missing` is how many cells
 * fewer than the header it has.
 */
export type RawRow = {
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly troubles?: readonly Trouble[];
  readonly misplaced?: boolean;
  readonly missing?: number;
};

/** A table as a reader gives it, before it is known which one it is. */
export type RawSheet = {
  readonly name: string;
  /** The name that may tell the table: of the file or of the workbook's sheet. */
  readonly title: string;
  readonly header: readonly string[];
  readonly rows: Batched<RawRow>;
  /** Lets go of the file, however many of the rows were read. */
  close(): Promise<void>;
};
