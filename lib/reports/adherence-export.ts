import type { FiguresReach } from "@/lib/access/reach";
import { isOfCalendar } from "@/lib/audit/disclosure/calendar";
import type { Period } from "@/lib/records/period";
import { keepExport } from "@/lib/store/quality/exports";
import { adherenceCsv } from "@/lib/views/adherence-csv";
import { adherenceDocument } from "@/lib/views/adherence-document";
import type { AdherenceReport } from "@/lib/views/adherence-report";
import { adherenceSheets } from "@/lib/views/adherence-sheets";
import { canonicalJson } from "@/lib/views/canonical-json";
import { type ExportFormat, exportEndings } from "@/lib/views/export-format";
import { adherenceBundle } from "@/lib/views/fhir/adherence-bundle";
import { adherenceReport } from "./adherence-report";
import { AskedWrongly } from "./asked-period";
import { fingerprintOf, sha256 } from "./fingerprint";
import { furtherMeasures } from "./further-measures";
import { documentPdf } from "./pdf/document-pdf";
import { workbook } from "./workbook";

/** A file that leaves the house. */
export type ExportedFile = {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Of the bytes. */
  readonly sha256: string;
  /** Of the report in canonical JSON: the same in every format. */
  readonly fingerprint: string;
  readonly report: AdherenceReport;
};

const types: Readonly<Record<ExportFormat, string>> = {
  csv: "text/csv; charset=utf-8; header=present",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  json: "application/json",
  fhir: "application/fhir+json",
  pdf: "application/pdf",
};

/** Why a report of the period may not leave the house; null where it may. */
export function mayNotLeave(period: Period): string | null {
  if (isOfCalendar(period)) return null;
  return `A file is made of a month, a quarter or a year: of other days, as ${period.name}, what is left between two files could be single patients. The page shows any days.`;
}

/** The report as a file; that it was made, and by whom, is kept with its hashes. @throws AskedWrongly for other days than the calendar's */
export async function exportAdherence(
  reach: FiguresReach,
  period: Period,
  format: ExportFormat,
): Promise<ExportedFile> {
  const wrong = mayNotLeave(period);
  if (wrong) throw new AskedWrongly(wrong);
  const report = await adherenceReport(reach, period);
  const fingerprint = fingerprintOf(report);
  const bytes = new Uint8Array(await written[format](report, fingerprint, reach, period));
  const hash = sha256(bytes);
  await keepExport(reach, {
    ...{ what: "adherence report", format, period: period.name },
    ...{ sha256: hash, fingerprint },
  });
  return {
    name: `${fileName(reach, period)}${exportEndings[format]}`,
    type: types[format],
    bytes,
    sha256: hash,
    fingerprint,
    report,
  };
}

type Written = (
  report: AdherenceReport,
  fingerprint: string,
  reach: FiguresReach,
  period: Period,
) => Promise<Uint8Array>;

const written: Readonly<Record<ExportFormat, Written>> = {
  csv: async (report, fingerprint) => Buffer.from(adherenceCsv(report, fingerprint), "utf8"),
  xlsx: async (report, fingerprint) => workbook(adherenceSheets(report, fingerprint)),
  json: async (report) => Buffer.from(canonicalJson(report), "utf8"),
  fhir: async (report, fingerprint, reach, period) => {
    const further = await furtherMeasures(reach, period);
    return Buffer.from(canonicalJson(adherenceBundle(report, fingerprint, { further })), "utf8");
  },
  // Dated by the records, so that the same report is the same file.
  pdf: async (report, fingerprint) =>
    documentPdf(adherenceDocument(report, fingerprint), new Date(report.cutOff ?? 0)),
};

function fileName({ practices }: FiguresReach, period: Period): string {
  const practice = practices?.length === 1 ? `-${practices[0]?.replaceAll(/[^\w-]+/g, "_")}` : "";
  return `adherence-${period.name.replace("..", "-to-")}${practice}`;
}
