import type { FieldOffer, FileColumn, Mapping } from "@/lib/reports/waiting-file";

/** One table that the file feeds, and what feeds one field of it. */
export type TableFeed = Mapping["tables"][number];
export type Feed = TableFeed["fields"][string];
export type ColumnFeed = Extract<Feed, { columns: string[] }>;
export type Word = NonNullable<ColumnFeed["words"]>[number];

/** What the editor knows of the file and of the record format. */
export type Around = {
  readonly columns: readonly FileColumn[];
  readonly offers: Readonly<Record<string, readonly FieldOffer[]>>;
  readonly tables: readonly { readonly name: string; readonly says: string }[];
  readonly reasons: Readonly<Record<string, string>>;
};
