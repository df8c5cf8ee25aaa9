import type { Viewer } from "@/lib/access/viewer";
import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import { auditAt } from "@/lib/reports/audits/audit-at";
import { beginNewAudit } from "@/lib/reports/audits/begin";
import { endCloserLook } from "@/lib/reports/audits/look-acts";
import { closeWindow, openWindow } from "@/lib/reports/audits/scope-acts";
import { keepAuditText } from "@/lib/reports/audits/text-sync";
import { dataTextKey, lookTextKey } from "@/lib/views/audits/text-keys";
import { canal, delivery, type Rows, visit } from "../../store/bring-in";
import { viewerAs } from "../../store/comparing/viewers";

export const lead = viewerAs("clinical-lead");
export const leadOfElm = viewerAs("clinical-lead", "ELM");
export const one = viewerAs("clinician", "OAK", "OAK/C01");
export const two = { ...viewerAs("clinician", "OAK", "OAK/C02"), userId: "another" };
export const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);

/** Twelve visits of C01 in July and three of C02 in August at OAK, with a delivery each; six of C01 in the quarter before. */
export function rows(): Rows {
  const sessions = Array.from({ length: 15 }, (_, place) => ({
    ...visit,
    session_id: `V-${place}`,
    patient: `p-${place}`,
    clinician: place < 12 ? "C01" : "C02",
    started_at: `2026-0${place < 12 ? 7 : 8}-${String(place + 1).padStart(2, "0")}T08:10:00.000Z`,
    ended_at: undefined,
  }));
  const before = Array.from({ length: 6 }, (_, place) => ({
    ...visit,
    session_id: `B-${place}`,
    patient: `b-${place}`,
    started_at: `2026-06-0${place + 1}T08:10:00.000Z`,
    ended_at: undefined,
  }));
  const all = [...sessions, ...before];
  return {
    sessions: all,
    canals: all.map(({ session_id }) => ({ ...canal, session_id })),
    irrigation: all.map(({ session_id }) => ({ ...delivery, session_id })),
  };
}

/** Begins an audit of OAK for the quarter and hands back its number as addresses have it. */
export async function begun(viewer: Viewer, period = "2026-Q3"): Promise<string> {
  const answer = await beginNewAudit(viewer, { practice: "OAK", period });
  if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  return String(answer.audit);
}

/** Types a text into an audit as somebody who begins from the revision in force. */
export async function write(viewer: Viewer, id: string, key: string, text: string, begunFrom = 0) {
  return keepAuditText(viewer, id, { key, begun: begunFrom, text });
}

/** Does all that an audit lacks before it can be signed. */
export async function madeReady(viewer: Viewer, id: string): Promise<void> {
  await write(viewer, id, "purpose", "To learn.");
  await write(viewer, id, "summary", "It is so.");
  await write(viewer, id, "no-actions", "None is needed.");
  const audit = await auditAt(viewer, id);
  if (!audit) throw new Error(`no audit ${id}`);
  for (const { what, about } of audit.missing)
    if (what === "note") await write(viewer, id, dataTextKey(about), "Known.");
  for (const { id: flag } of toLookAt(audit.content.computed)) {
    await write(viewer, id, lookTextKey(flag, "data"), "The records are right.");
    await endCloserLook(viewer, { audit: id, flag, step: "data" });
  }
  await openWindow(viewer, { audit: id, until: tomorrow });
  await closeWindow(viewer, { audit: id });
}
