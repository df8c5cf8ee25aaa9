/** The different words of a column with how often each, the empty cell first. */
export type ColumnWords = {
  readonly words: readonly { readonly text: string; readonly count: string }[];
  /** There are more than are listed. */
  readonly more: boolean;
  /** It names patients, and nothing of it is shown. */
  readonly hidden: boolean;
};
