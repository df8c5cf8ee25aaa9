import type { Choice } from "./terms";

/** What the first rows of a file become under a mapping. */
export type PreviewView = {
  /** Why the file cannot be read by the mapping at all; null where it can. */
  readonly wrong: string | null;
  readonly first: FirstRows;
  /** In the order of the mapping's tables. */
  readonly tables: readonly PreviewTable[];
  /** Rows of the file that were looked at. */
  readonly looked: string;
};

/** The first rows of the file as they are. Columns that name patients are not shown. */
export type FirstRows = {
  readonly columns: readonly { readonly name: string; readonly hidden: boolean }[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
};

export type PreviewTable = {
  readonly table: string;
  readonly fields: readonly Choice[];
  readonly rows: readonly PreviewRow[];
  /** Rows that make a row of the table, those of them that would be held, and those that make none. */
  readonly made: string;
  readonly held: string;
  readonly none: string;
  /** By field, the first different values that it has. */
  readonly firsts: Readonly<Record<string, readonly string[]>>;
};

export type PreviewRow = {
  readonly lines: string;
  readonly cells: readonly string[];
  /** Why it would be held; empty where it would not. */
  readonly held: readonly { readonly field: string; readonly says: string }[];
};
