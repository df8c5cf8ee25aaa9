import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import type { OwnReason } from "@/lib/views/exception-reason";

/** The reasons that practices within the reach added, retired ones too. A clinician's work may lie in any practice. */
export async function ownReasons(reach: FiguresReach | OwnReach): Promise<OwnReason[]> {
  return (await ownTerms(reach)).filter(({ kind }) => kind === "reason");
}
