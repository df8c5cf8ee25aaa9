/** A mapping while it is edited: the form of lib/intake/mapping, whose name and tables may still be empty. */
export type MappingDraft = {
  readonly format: "canal-audit-mapping-1";
  readonly name: string;
  readonly says?: string;
  readonly file: FileDraft;
  readonly columns: readonly string[];
  readonly zone?: string;
  readonly tables: readonly TableDraft[];
};

/** How the file is written; see lib/intake/mapping/file-layout. */
export type FileDraft = {
  readonly kind: "separated" | "workbook" | "json" | "json-lines";
  readonly encoding: string;
  readonly separator: string;
  readonly quote: string;
  readonly headerLine: number;
  readonly sheet?: string;
  readonly decimal: string;
  readonly thousands: string;
};

export type TableDraft = {
  readonly table: string;
  readonly only?: readonly ConditionDraft[];
  readonly minutes?: number;
  readonly fields: Readonly<Record<string, FeedDraft>>;
};

export type ConditionDraft = {
  readonly column: string;
  readonly is?: readonly string[];
  readonly not?: readonly string[];
};

export type FeedDraft = ColumnFeedDraft | { readonly always: string } | { readonly numbered: true };

export type ColumnFeedDraft = {
  readonly columns: readonly string[];
  readonly words?: readonly WordDraft[];
  readonly unit?: string;
  readonly clock?: ClockDraft;
};

export type WordDraft = {
  readonly word: string;
  readonly means: string | null;
  readonly also?: Readonly<Record<string, string>>;
};

export type ClockDraft = { readonly day: string; readonly hours: number };
