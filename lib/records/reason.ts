/** Why a row is held: what was found, what would be right, and both in one sentence. */
export type Reason = {
  /** The column it is about; absent where it is the row as a whole. */
  readonly column?: string;
  readonly found: string;
  readonly remedy: string;
  readonly sentence: string;
};

/** Where a row came from. `line` counts from 1 and includes the header; of JSON it is the item. */
export type Place = { readonly file: string; readonly line: number };
