import { stringify } from "csv-stringify/sync";
import { adherenceColumns } from "./adherence-columns";
import type { AdherenceReport } from "./adherence-report";
import { adherenceRows } from "./adherence-rows";
import { csvField } from "./csv-field";

/**
 * The report as CSV by RFC 4180: UTF-8 with a byte order mark, CRLF, one header, the same number of fields in every
 * record. Without a value a field is empty.
 */
export function adherenceCsv(report: AdherenceReport, fingerprint: string): string {
  return stringify(
    adherenceRows(report, fingerprint).map((cells) =>
      adherenceColumns.map((column) => csvField(cells[column])),
    ),
    {
      columns: [...adherenceColumns],
      header: true,
      bom: true,
      record_delimiter: "\r\n",
      quoted_match: /[\r\n]/,
    },
  );
}
