import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { AdherenceReport } from "@/lib/views/adherence-report";
import { exportFormat, exportFormats } from "@/lib/views/export-format";
import { type ExportedFile, exportAdherence, mayNotLeave } from "./adherence-export";
import { adherenceReport } from "./adherence-report";
import { type Address, type Asked, AskedWrongly, askedFigures } from "./asked-period";

export type QualityReport = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly report: AdherenceReport;
  /** Why there is no file of these days; null where there is. */
  readonly noFile: string | null;
};

/** The quality officer's report as it will be read. @throws Refused, AskedWrongly */
export async function qualityReport(viewer: Viewer, address: Address): Promise<QualityReport> {
  const { reach, period, periods, practices, practice } = await askedFigures(
    qualityReach(viewer),
    address,
  );
  const report = await adherenceReport(reach, period);
  return { period, periods, practices, practice, report, noFile: mayNotLeave(period) };
}

/** The same as a file, ?format=csv, xlsx, json, fhir or pdf; the export is kept. @throws Refused, AskedWrongly */
export async function qualityExport(viewer: Viewer, address: Address): Promise<ExportedFile> {
  const { reach, period } = await askedFigures(qualityReach(viewer), address);
  const format = exportFormat([address.format ?? "csv"].flat().join(" "));
  if (!format)
    throw new AskedWrongly(
      `The report is to be had as ${Object.keys(exportFormats).join(", ")}; the address asks for "${address.format}".`,
    );
  return exportAdherence(reach, period, format);
}
