import { z } from "zod";
import type { Viewer } from "@/lib/access/viewer";
import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import {
  type ClinicianNames,
  clinicianKeys,
  redrawnCodes,
  withCodes,
} from "@/lib/audit/cycle/redrawn-codes";
import type { SignedVersion } from "@/lib/store/audits/signed";
import { auditDocument } from "@/lib/views/audits/document/audit-document";
import type { ReportDocument } from "@/lib/views/document/document";
import type { Address } from "../asked-period";
import { sha256 } from "../fingerprint";
import { auditAt, contentOf } from "./audit-at";

/** A report of an audit and what was asked for. */
export type AuditReport = {
  readonly id: number;
  readonly of: Pick<AuditContent["form"], "practice" | "period">;
  readonly document: ReportDocument;
  readonly names: ClinicianNames;
  /** Which signed version; null for a draft. */
  readonly version: SignedVersion | null;
  /** Every signed version's number, the first first. */
  readonly versions: readonly number[];
};

const asked = z.object({
  clinicians: z.enum(["none", "redrawn", "codes"]).catch("none"),
  version: z.coerce.number().int().positive().optional().catch(undefined),
});

/**
 * The report of an audit: of the signed version asked for with ?version=, else the latest one, else of the draft. ?clinicians= says how they are
 * called in it. Null where there is no such audit or version. @throws Refused
 */
export async function auditReport(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<AuditReport | null> {
  const audit = await auditAt(viewer, id);
  if (!audit) return null;
  const { clinicians, version: wanted } = asked.parse(address);
  const version = wanted
    ? audit.versions.find((one) => one.version === wanted)
    : audit.open
      ? null
      : audit.versions.at(-1);
  if (version === undefined && wanted) return null;
  const content = version ? contentOf(version) : audit.content;
  return {
    id: audit.row.id,
    of: { practice: audit.row.practice, period: audit.row.period },
    document: documentOf(content, version ?? null, clinicians),
    names: clinicians,
    version: version ?? null,
    versions: audit.versions.map((one) => one.version),
  };
}

/** The document of a content, with clinicians called as asked. */
export function documentOf(
  content: AuditContent,
  version: SignedVersion | null,
  names: ClinicianNames,
): ReportDocument {
  // Drawn by the version's fingerprint: the same report has the same codes, another one has others.
  const salt = version?.sha256 ?? `draft ${content.form.id}`;
  const codes = redrawnCodes(clinicianKeys(content), (key) => sha256(`${salt} ${key}`));
  return auditDocument({
    content: names === "redrawn" ? withCodes(content, codes) : content,
    names,
    fingerprints: version && { signed: version.sha256, computed: version.computedSha256 },
    today: version?.at.slice(0, 10) ?? new Date().toISOString().slice(0, 10),
  });
}
