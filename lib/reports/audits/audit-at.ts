import { type FiguresReach, leadReach, narrowed } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { AuditComputed, AuditContent } from "@/lib/audit/cycle/audit-content";
import { dataFindings } from "@/lib/audit/cycle/data-findings";
import { type Missing, missingToSign } from "@/lib/audit/cycle/missing-to-sign";
import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import { type AuditRow, auditWithin } from "@/lib/store/audits/audits";
import { type SignedVersion, signedVersions } from "@/lib/store/audits/signed";
import { workOf } from "@/lib/store/audits/work";
import { weekGrid } from "@/lib/views/week-grid";
import { auditMasks } from "./audit-masks";
import { auditComputed } from "./computed";

/** An audit as it stands for a lead: the latest signed version where it is signed, else computed from today's records. */
export type AuditAt = {
  readonly reach: FiguresReach;
  readonly row: AuditRow;
  readonly content: AuditContent;
  /** The first first. */
  readonly versions: readonly SignedVersion[];
  /** It may be written into. */
  readonly open: boolean;
  readonly missing: readonly Missing[];
};

/** @param id as an address has it; null where there is no such audit within the viewer's reach. @throws Refused */
export async function auditAt(viewer: Viewer, id: string): Promise<AuditAt | null> {
  const lead = leadReach(viewer);
  const row = /^\d{1,9}$/.test(id) ? await auditWithin(lead, Number(id)) : null;
  return row ? auditOf(lead, row) : null;
}

/** The same of an audit that was read already. */
export async function auditOf(lead: FiguresReach, row: AuditRow): Promise<AuditAt> {
  const reach = narrowed(lead, row.practice ?? undefined);
  const versions = await signedVersions(lead, row.id);
  const latest = versions.at(-1);
  const open = row.setAsideBy === null && (!latest || row.restate !== null);
  const content = latest && !open ? contentOf(latest) : await liveContent(lead, row);
  return { reach, row, content, versions, open, missing: missingIn(content) };
}

/** What was signed, read back from its bytes. */
export function contentOf({ content }: Pick<SignedVersion, "content">): AuditContent {
  return JSON.parse(content) as AuditContent;
}

/** What today's records alone come to, for the scope of an audit. */
export async function liveComputed(lead: FiguresReach, row: AuditRow): Promise<AuditComputed> {
  const before = row.previous === null ? null : await auditWithin(lead, row.previous);
  return auditComputed(lead, row, before);
}

/** The audit computed from today's records, with all that is written in it. */
export async function liveContent(lead: FiguresReach, row: AuditRow): Promise<AuditContent> {
  const work = await workOf(lead, row.id);
  if (!work) throw new Error(`audit ${row.id} was there a moment ago`);
  const { id, practice, period, criteria, previous, by, at } = row;
  const computed = await liveComputed(lead, row);
  return {
    form: { id, practice, period, criteria, previous, by, at },
    computed,
    work,
    masked: await auditMasks(lead, practice, computed),
    signed: null,
  };
}

/** What the audit lacks before it can be signed. */
export function missingIn({ computed, work }: AuditContent): Missing[] {
  const today = new Date().toISOString().slice(0, 10);
  const { gaps } = weekGrid(computed.weeks, computed.period, computed.lastDay);
  const findings = dataFindings(computed, today, gaps.length > 0);
  return missingToSign(work, { findings, looks: toLookAt(computed) }, today);
}
