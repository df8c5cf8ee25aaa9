import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { safetyEvents } from "@/lib/store/quality/safety-events";
import { type SafetyLine, safetyLines } from "@/lib/views/safety-list";
import { keptWithin } from "./kept-within";

/** Counts, days and open actions of what is listed apart from scores, by practice; kept until the records change. */
export function safetyCounts(reach: FiguresReach, period: Period): Promise<SafetyLine[]> {
  return keptWithin(reach, ["safety counts", period], async () => {
    const { events, patients } = await safetyEvents(reach, period);
    return safetyLines(events, patients);
  });
}
