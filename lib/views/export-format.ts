/** The files in which a report is to be had: what each is called on a page. */
export const exportFormats = { csv: "CSV", xlsx: "XLSX", json: "JSON" } as const;
export type ExportFormat = keyof typeof exportFormats;

/** The format of that name; undefined where there is none. */
export function exportFormat(name: string): ExportFormat | undefined {
  return Object.hasOwn(exportFormats, name) ? (name as ExportFormat) : undefined;
}
