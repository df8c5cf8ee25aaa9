/** A test of a mapping on the whole file: how far it is, or what it found. */
export type TestView =
  | { readonly state: "none" }
  | { readonly state: "running"; readonly says: string; readonly share: number | null }
  | { readonly state: "failed"; readonly says: string }
  | { readonly state: "done"; readonly tables: readonly TestedTable[]; readonly says: string };

export type TestedTable = {
  readonly id: string;
  readonly heading: string;
  readonly good: string;
  /** Of the good ones, those that say the same as the row before. */
  readonly same: string;
  readonly held: string;
  readonly reasons: readonly TestedReason[];
};

export type TestedReason = {
  readonly id: string;
  readonly field: string;
  readonly says: string;
  readonly rows: string;
  /** "line 12: “1;2”". */
  readonly examples: readonly string[];
};
