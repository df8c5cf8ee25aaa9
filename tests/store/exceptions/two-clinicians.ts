import { leadReach, ownReach, qualityReach } from "@/lib/access/reach";
import { canal, type Rows, visit } from "../bring-in";
import { viewerAs } from "../comparing/viewers";

/** V-1 of C01, whose canal MB1 is C02's; V-2 of C02 alone; W-1 of C01 at another practice, who is another person. */
export const rows: Rows = {
  sessions: [
    visit,
    { ...visit, session_id: "V-2", clinician: "C02", started_at: "2026-07-10T08:10:00.000Z" },
    { ...visit, session_id: "W-1", practice: "ELM", chair: "ELM-1" },
  ],
  canals: [
    { ...canal, clinician: "C02" },
    { ...canal, canal: "DB" },
    { ...canal, session_id: "V-2" },
    { ...canal, session_id: "W-1" },
  ],
  steps: [
    { session_id: "V-1", canal: "", step: "dam", status: "excepted", reason: "not-possible" },
    { session_id: "V-2", canal: "MB1", step: "patency", status: "done" },
  ],
  exceptions: [
    {
      session_id: "V-1",
      canal: "MB1",
      criterion: "timer-reset",
      reason: "equipment-failure",
      entered_by: "C02",
    },
  ],
};

export const lead = leadReach(viewerAs("clinical-lead"));
export const leadOfElm = leadReach(viewerAs("clinical-lead", "ELM"));
export const officer = qualityReach(viewerAs("quality-officer"));
export const one = ownReach(viewerAs("clinician", "OAK", "OAK/C01"));
export const two = ownReach(viewerAs("clinician", "OAK", "OAK/C02"));

/** A key at V-1. */
export function at(canalName: string, criterion: string, sessionId = "V-1", practice = "OAK") {
  return { practice, sessionId, canal: canalName, criterion };
}
