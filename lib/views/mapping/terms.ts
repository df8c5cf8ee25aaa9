/** One of several to choose from. */
export type Choice = { readonly value: string; readonly words: string };

/** A field that a mapping may feed, in words. */
export type FieldTerms = {
  readonly name: string;
  readonly words: string;
  readonly says: string;
  /** What a cell may hold, as "a number from 0 to 100 mL". */
  readonly holds: string;
  readonly required: boolean;
  readonly type: string;
  /** What it may be, where that is a short list; empty otherwise. */
  readonly choices: readonly Choice[];
  /** Units that can be converted into its own, its own first; empty where it has none. */
  readonly units: readonly Choice[];
};

/** A table of the record format that a file may feed. */
export type TableTerms = {
  readonly name: string;
  readonly words: string;
  readonly says: string;
  readonly fields: readonly FieldTerms[];
};

/** Holds the field a moment or a day, so that the order of the day has to be known. */
export function holdsTime({ type }: Pick<FieldTerms, "type">): boolean {
  return type === "instant" || type === "day";
}
