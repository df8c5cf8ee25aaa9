/** A row as a reader gives it: its cells by column name, or what keeps it from being cut into cells. */
export type RawRow = { readonly line: number } & (
  | { readonly cells: Readonly<Record<string, string>>; readonly trouble?: undefined }
  | { readonly cells?: undefined; readonly trouble: { readonly found: string; readonly remedy: string } }
);

/** A table as a reader gives it, before it is known which one it is. */
export type RawSheet = {
  readonly name: string;
  /** The name that may tell the table: of the file or of the workbook's sheet. */
  readonly title: string;
  readonly header: readonly string[];
  readonly rows: AsyncIterable<RawRow>;
};
