import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { AdherenceReport } from "@/lib/views/adherence-report";
import { exportFormat, exportFormats } from "@/lib/views/export-format";
import { type ExportedFile, exportAdherence } from "./adherence-export";
import { adherenceReport } from "./adherence-report";
import { type Address, type Asked, AskedWrongly, askedFigures } from "./asked-period";

export type QualityReport = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly report: AdherenceReport;
};

/** The quality officer's report as it will be read. @throws Refused, AskedWrongly */
export async function qualityReport(viewer: Viewer, address: Address): Promise<QualityReport> {
  const { reach, period, periods, practices, practice } = await askedFigures(
    qualityReach(viewer),
    address,
  );
  return { period, periods, practices, practice, report: await adherenceReport(reach, period) };
}

/** The same as a file, ?format=csv, xlsx, json or fhir; the export is kept. @throws Refused, AskedWrongly */
export async function qualityExport(viewer: Viewer, address: Address): Promise<ExportedFile> {
  const { reach, period } = await askedFigures(qualityReach(viewer), address);
  const format = exportFormat([address.format ?? "csv"].flat().join(" "));
  if (!format)
    throw new AskedWrongly(
      `The report is to be had as ${Object.keys(exportFormats).join(", ")}; the address asks for "${address.format}".`,
    );
  return exportAdherence(reach, period, format);
}
