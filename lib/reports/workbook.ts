import writeWorkbook from "write-excel-file/node";
import type { ReportSheet } from "@/lib/views/adherence-sheets";

/** Sheets as an XLSX workbook: typed cells, the header frozen; text is never a formula. */
export async function workbook(sheets: readonly ReportSheet[]): Promise<Buffer> {
  return writeWorkbook(
    sheets.map(({ name, header, rows, fractions }) => ({
      sheet: name,
      stickyRowsCount: 1,
      columns: header.map((_, place) => ({ width: widthOf([header, ...rows], place) })),
      data: [
        header.map((value) => ({ value, type: String, fontWeight: "bold" as const })),
        ...rows.map((row) => row.map((value, place) => cell(value, fractions.includes(place)))),
      ],
    })),
  ).toBuffer();
}

function cell(value: string | number | null, fraction: boolean) {
  if (value === null) return null;
  if (typeof value === "string") return { value, type: String };
  return { value, type: Number, format: fraction ? "0.0%" : "General" };
}

/** In characters: as wide as the longest of the first rows, within reason. */
function widthOf(rows: readonly (readonly (string | number | null)[])[], place: number): number {
  const longest = Math.max(...rows.slice(0, 200).map((row) => String(row[place] ?? "").length));
  return Math.min(60, Math.max(8, longest + 2));
}
