import type { FiguresReach } from "@/lib/access/reach";
import { practicesWithin } from "@/lib/store/records/practices";
import { latestLocalDay } from "./local-day";

/** The local day in the practices; of several zones the latest. */
export async function todayIn(reach: FiguresReach, practices: readonly string[]): Promise<string> {
  const known = await practicesWithin(reach);
  return latestLocalDay(
    known.filter(({ code }) => practices.includes(code)).map(({ zone }) => zone),
  );
}
