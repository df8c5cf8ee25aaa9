import {
  type FiguresReach,
  hasRole,
  leadReach,
  type OwnReach,
  ownReach,
  qualityReach,
} from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";

/** Whose units a viewer may look through: a lead's with clinicians, a quality officer's without, else a clinician's own. */
export function unitsReach(viewer: Viewer): FiguresReach | OwnReach {
  if (hasRole(viewer, "clinical-lead")) return leadReach(viewer);
  if (hasRole(viewer, "quality-officer")) return qualityReach(viewer);
  if (hasRole(viewer, "clinician")) return ownReach(viewer);
  throw new Refused("Units are for the clinical lead, the clinician and the quality officer.");
}
