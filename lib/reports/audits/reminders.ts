import { hasRole, leadReach, notesReach, ownReach, qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { actionsOf, actionsWithin } from "@/lib/store/audits/actions";
import { openActions } from "@/lib/views/audits/action-lines";
import { type Reminder, reminders } from "@/lib/views/audits/reminders";
import { prepareDue } from "./prepare-due";
import { sharedAuditsPage } from "./shared";

/** What audits ask of the viewer: their own open actions, as a clinician what to confirm, as a lead what is overdue. */
export async function remindersFor(viewer: Viewer): Promise<readonly Reminder[]> {
  const today = new Date().toISOString().slice(0, 10);
  await preparedFor(viewer, today);
  const isClinician = hasRole(viewer, "clinician") && viewer.grants.some((one) => one.clinicianKey);
  const [own, shared, all] = await Promise.all([
    actionsOf(notesReach(viewer)),
    isClinician && ownReach(viewer) ? sharedAuditsPage(viewer) : null,
    hasRole(viewer, "clinical-lead") ? actionsWithin(leadReach(viewer)) : [],
  ]);
  return reminders({
    own: openActions(own, today),
    asked: shared?.audits.filter(({ asked }) => asked) ?? [],
    late: openActions(all, today).filter(({ late, ownerId }) => late && ownerId !== viewer.userId),
  });
}

/** What is due is prepared when a page of those whom it concerns is opened: audits at once, files beside the page. */
async function preparedFor(viewer: Viewer, today: string): Promise<void> {
  if (hasRole(viewer, "clinical-lead")) await prepareDue(leadReach(viewer), "audit", today);
  if (hasRole(viewer, "quality-officer"))
    // What goes wrong is tried again, and said, on the page of prepared reports.
    prepareDue(qualityReach(viewer), "report", today).catch(() => undefined);
}
