/** The files in which a report is to be had: what each is called on a page. */
export const exportFormats = {
  csv: "CSV",
  xlsx: "XLSX",
  json: "JSON",
  fhir: "FHIR",
  pdf: "PDF",
} as const;
export type ExportFormat = keyof typeof exportFormats;

/** How the name of a file of each format ends. */
export const exportEndings: Readonly<Record<ExportFormat, string>> = {
  csv: ".csv",
  xlsx: ".xlsx",
  json: ".json",
  fhir: ".fhir.json",
  pdf: ".pdf",
};

/** The format of that name; undefined where there is none. */
export function exportFormat(name: string): ExportFormat | undefined {
  return Object.hasOwn(exportFormats, name) ? (name as ExportFormat) : undefined;
}

/** The format that a file's name ends as, by the longest ending; undefined where it is none of them. */
export function exportFormatOf(file: string): ExportFormat | undefined {
  const fitting = Object.entries(exportEndings)
    .filter(([, ending]) => file.toLowerCase().endsWith(ending))
    .sort(([, one], [, other]) => other.length - one.length);
  return exportFormat(fitting[0]?.[0] ?? "");
}
