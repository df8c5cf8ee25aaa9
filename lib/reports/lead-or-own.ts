import { type FiguresReach, hasRole, leadReach, type OwnReach, ownReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";

/** As what somebody sees single units of a practice: as its lead, as a clinician, or as both. */
export type LeadOrOwn =
  | { readonly lead: FiguresReach; readonly own: OwnReach | null }
  | { readonly lead: null; readonly own: OwnReach };

/** @throws Refused where the viewer is neither a lead of that practice nor a clinician */
export function leadOrOwnAt(viewer: Viewer, practice: string): LeadOrOwn {
  const own = hasRole(viewer, "clinician") ? ownReach(viewer) : null;
  const lead = hasRole(viewer, "clinical-lead") ? leadReach(viewer) : null;
  if (lead && (lead.practices === null || lead.practices.includes(practice))) return { lead, own };
  if (own) return { lead: null, own };
  if (lead) throw new Refused(`Practice ${practice} is not yours to see.`);
  throw refusal();
}

/** As what somebody sees lists: as a lead where they are one, unless they ask for their own. @throws Refused */
export function leadOrOwn(viewer: Viewer, asksOwn: boolean): FiguresReach | OwnReach {
  const clinician = hasRole(viewer, "clinician");
  if (hasRole(viewer, "clinical-lead") && !(asksOwn && clinician)) return leadReach(viewer);
  if (clinician) return ownReach(viewer);
  throw refusal();
}

function refusal(): Refused {
  return new Refused(
    "This page is for the clinical lead and for clinicians; that is not one of your roles.",
  );
}
