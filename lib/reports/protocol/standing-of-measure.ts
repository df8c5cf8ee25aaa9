import type { FiguresReach } from "@/lib/access/reach";
import { criterionId } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { type StandingInPeriod, standingInPeriod } from "@/lib/views/protocol/standing-in-period";
import { todayIn } from "./today-in";

/** Since when a criterion is in force in the practices, and whether it was in the period; null for what is no criterion. */
export async function standingOfMeasure(
  reach: FiguresReach,
  measure: string,
  practices: readonly string[],
  period: Period,
): Promise<StandingInPeriod | null> {
  const id = criterionId(measure);
  if (id === undefined) return null;
  const [protocol, today] = await Promise.all([protocolWithin(reach), todayIn(reach, practices)]);
  return standingInPeriod(protocol, id, practices, period, today);
}
