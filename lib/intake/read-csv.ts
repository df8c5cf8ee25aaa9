import { commaSeparated } from "./csv-rows";
import type { RawSheet } from "./raw-row";
import { separatedSheet } from "./separated-sheet";
import { headerOf } from "./which-table";

/**
 * Reads a CSV file (RFC 4180, UTF-8, with or without a byte order mark) as a stream. A row of another length than the
 * header, or one that cannot be cut into cells, is told as such and costs no other row. Undefined where the file is empty.
 */
export async function readCsv(path: string, name: string): Promise<RawSheet | undefined> {
  return separatedSheet(path, name, {
    cut: commaSeparated,
    headerLine: 1,
    header: headerOf,
    unreadable: () =>
      "its first row is no header of a CSV file; save it as CSV with commas, in UTF-8.",
    remedy: (columns) =>
      `the header has ${columns}; a comma is missing or too many, or a text with a comma in it needs quotes round it`,
    openEnded: false,
  });
}
