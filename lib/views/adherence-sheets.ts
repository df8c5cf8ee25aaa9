import { type AdherenceCells, adherenceColumns } from "./adherence-columns";
import type { AdherenceReport } from "./adherence-report";
import { adherenceRows } from "./adherence-rows";

/** A sheet of a workbook: a header and typed cells; null is an empty cell. */
export type ReportSheet = {
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
  /** Places of the columns whose numbers are fractions, to be shown as percentages. */
  readonly fractions: readonly number[];
};

const sheets = [
  { name: "Figures", rows: ["figure"] },
  { name: "Overall", rows: ["overall"] },
  { name: "People", rows: ["people"] },
  { name: "Definitions", rows: ["about", "caution"] },
] as const;

const fractions: ReadonlySet<string> = new Set([
  "rate",
  "interval_lower",
  "interval_upper",
  "rate_if_unrecorded_not_met",
  "rate_if_unrecorded_met",
  "target",
  "clustered_lower",
  "clustered_upper",
]);

/** The records of the report on a sheet a kind, each with the columns that it uses, in the order and by the names of the CSV. */
export function adherenceSheets(report: AdherenceReport, fingerprint: string): ReportSheet[] {
  const records = adherenceRows(report, fingerprint);
  return sheets.map(({ name, rows }) => {
    const some = records.filter((cells) => rows.some((row) => row === cells.row));
    const columns = adherenceColumns.filter((column) => some.some((cells) => said(cells[column])));
    return {
      name,
      header: columns,
      rows: some.map((cells) => columns.map((column) => cells[column] ?? null)),
      fractions: columns.flatMap((column, place) => (fractions.has(column) ? [place] : [])),
    };
  });
}

function said(cell: AdherenceCells[keyof AdherenceCells]): boolean {
  return cell !== undefined && cell !== null && cell !== "";
}
