import { UnreadableFile } from "../unreadable-file";
import { type SheetRow, sheetRows } from "./sheet-rows";
import { cellStyles, sharedStrings, type WorkbookSheet, workbookSheets } from "./workbook-parts";
import { zipEntries } from "./zip-entries";

/** A workbook whose sheets can be read, one after the other. */
export type OpenWorkbook = {
  /** Those that are shown, in their order. */
  readonly sheets: readonly WorkbookSheet[];
  /** The rows of a sheet as a stream. */
  rows(sheet: WorkbookSheet): AsyncGenerator<SheetRow>;
  close(): void;
};

/**
 * Opens an XLSX workbook (ECMA-376).
 *
 * @throws UnreadableFile in one sentence where it is none, as reading its rows does where they are damaged
 */
export async function openWorkbook(path: string, name: string): Promise<OpenWorkbook> {
  const refused = (trouble: unknown) =>
    new UnreadableFile(
      name,
      `it cannot be read as a workbook (${trouble instanceof Error ? trouble.message : String(trouble)}); save it as .xlsx again, or its sheets as CSV files.`,
    );
  const parts = await zipEntries(path).catch((trouble: unknown) => {
    throw refused(trouble);
  });
  try {
    const { sheets, from1904 } = await workbookSheets(parts);
    const strings = await sharedStrings(parts);
    const around = { strings, styles: await cellStyles(parts), from1904 };
    return {
      sheets,
      async *rows({ part }) {
        try {
          yield* sheetRows(parts, part, around);
        } catch (trouble) {
          throw refused(trouble);
        }
      },
      close: () => parts.close(),
    };
  } catch (trouble) {
    parts.close();
    throw refused(trouble);
  }
}
