import { notesReach, type OwnReach, ownReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { AuditContent, ComparedFigure } from "@/lib/audit/cycle/audit-content";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { actionsOf } from "@/lib/store/audits/actions";
import { ownVisits } from "@/lib/store/audits/own-visits";
import {
  hasWork,
  keepRead,
  type OwnPart,
  ownPart,
  reflectionOf,
  type SharedAudit,
  sharedAudits,
} from "@/lib/store/audits/shared";
import { sharedVersion } from "@/lib/store/audits/signed";
import { openActions } from "@/lib/views/audits/action-lines";
import {
  type SharedLine,
  type SharedView,
  sharedLine,
  sharedView,
} from "@/lib/views/audits/shared-view";
import { summaryDocument } from "@/lib/views/audits/summary-document";
import type { ReportDocument } from "@/lib/views/document/document";
import type { Address } from "../asked-period";
import { criteriaShown } from "../criteria-shown";
import { ownFigures } from "../own-figures";
import { contentOf } from "./audit-at";
import { auditMeasures, periodOf } from "./computed";

/** The audits that concern a clinician, and the actions that they own. @throws Refused */
export async function sharedAuditsPage(viewer: Viewer) {
  const reach = ownReach(viewer);
  const today = todayIs();
  const audits = await concerning(reach);
  const lines = await Promise.all(
    audits.map(
      async (audit): Promise<SharedLine> =>
        sharedLine(audit, await ownPart(reach, audit.id), today),
    ),
  );
  return { audits: lines, actions: openActions(await actionsOf(notesReach(viewer)), today) };
}

/** One audit as it concerns the viewer; null where it does not. That it was read is kept for the lead. @throws Refused */
export async function sharedAuditPage(viewer: Viewer, id: string): Promise<SharedView | null> {
  const found = await ownAudit(viewer, id);
  if (!found) return null;
  const { reach, audit, part, own } = found;
  await keepRead(reach, notesReach(viewer), audit.id);
  return sharedView({
    audit,
    part,
    own,
    visits: await ownVisits(reach, audit.practice, periodOf(audit)),
    reflection: await reflectionOf(notesReach(viewer), audit.id),
    today: todayIs(),
  });
}

/** What a clinician has of an audit: their part and their figures, frozen where it is signed. */
export async function ownAudit(
  viewer: Viewer,
  id: string,
): Promise<{
  readonly reach: OwnReach;
  readonly audit: SharedAudit;
  readonly part: OwnPart;
  readonly own: readonly ComparedFigure[];
} | null> {
  const reach = ownReach(viewer);
  const audit = (await concerning(reach)).find((one) => String(one.id) === id);
  if (!audit) return null;
  const version = audit.open ? null : await sharedVersion(reach, audit.id);
  const own = version ? ownOf(contentOf(version), reach) : await liveOwn(reach, audit);
  return { reach, audit, part: await ownPart(reach, audit.id), own };
}

async function concerning(reach: OwnReach): Promise<SharedAudit[]> {
  const all = await sharedAudits(reach);
  const theirs = await Promise.all(
    all.map((audit) => hasWork(reach, audit.practice, periodOf(audit))),
  );
  return all.filter((_, place) => theirs[place]);
}

function ownOf({ computed }: AuditContent, { clinicianKey }: OwnReach): ComparedFigure[] {
  return computed.own.filter(
    ({ figure }) => figure.about.kind === "clinician" && figure.about.key === clinicianKey,
  );
}

async function liveOwn(reach: OwnReach, audit: SharedAudit): Promise<readonly ComparedFigure[]> {
  const period = periodOf(audit);
  const criteria = (await criteriaShown(reach, [period])).filter(
    ({ id, byClinician }) => byClinician && audit.criteria.includes(id),
  );
  return ownFigures(reach, [...auditMeasures, ...criteria.map(criterionMeasure)], period);
}

function todayIs(): string {
  return new Date().toISOString().slice(0, 10);
}

/** The viewer's own summary of an audit for their portfolio; null where it does not concern them. @throws Refused */
export async function ownSummaryDocument(
  viewer: Viewer,
  id: string,
  address: Address,
): Promise<ReportDocument | null> {
  const view = await sharedAuditPage(viewer, id);
  return view && summaryDocument(view, address.reflection === "yes");
}
