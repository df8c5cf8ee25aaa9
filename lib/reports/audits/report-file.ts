import { leadReach, narrowed } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { keepExport } from "@/lib/store/quality/exports";
import type { ReportDocument } from "@/lib/views/document/document";
import type { Address } from "../asked-period";
import { fingerprintOf, sha256 } from "../fingerprint";
import { documentPdf } from "../pdf/document-pdf";
import { auditReport } from "./report";
import { ownSummaryDocument } from "./shared";

/** A PDF to be sent. */
export type PdfFile = { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };

/**
 * The report of an audit as PDF; that it was made, and by whom, is kept with its hashes. The same version gives the same bytes. Null where
 * there is no such audit or version. @throws Refused
 */
export async function auditReportFile(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<PdfFile | null> {
  const report = await auditReport(viewer, id, address);
  if (!report) return null;
  const { document, version, names } = report;
  const bytes = await documentPdf(document, version ? new Date(version.at) : new Date());
  const { practice, period } = report.of;
  await keepExport(narrowed(leadReach(viewer), practice ?? undefined), {
    what: `audit report, ${version ? `version ${version.version}` : "draft"}, ${calledWords[names]}`,
    format: "pdf",
    period,
    sha256: sha256(bytes),
    fingerprint: fingerprintOf(document),
  });
  const of = (practice ?? "group").replaceAll(/[^\w-]+/g, "_");
  const state = version ? `-v${version.version}` : "-draft";
  return { name: `audit-${of}-${period.replace("..", "-to-")}${state}.pdf`, bytes };
}

/** A clinician's own summary as PDF: theirs, so that no export of it is kept. Null where the audit does not concern them. @throws Refused */
export async function ownSummaryFile(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<PdfFile | null> {
  const document: ReportDocument | null = await ownSummaryDocument(viewer, id, address);
  return (
    document && {
      name: `my-summary-of-audit-${id}.pdf`,
      bytes: await documentPdf(document, new Date()),
    }
  );
}

const calledWords = {
  none: "no clinician named",
  redrawn: "clinicians by codes drawn for it",
  codes: "clinicians by their codes",
} as const;
