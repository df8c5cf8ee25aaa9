import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Measured } from "@/lib/measures/measured";
import { measures } from "@/lib/measures/measures";
import { criterionId } from "@/lib/protocol/criterion";
import { criteriaOf } from "@/lib/protocol/protocol";
import { protocolWithin } from "@/lib/store/protocol/versions";

/** What an id names within the reach: a measure, or a criterion in its latest wording; undefined where it names nothing. */
export async function measuredAs(
  reach: FiguresReach | OwnReach,
  id: string,
): Promise<Measured | undefined> {
  if (measures.some((measure) => measure.id === id)) return { measure: id };
  const criteria = criteriaOf(await protocolWithin(reach));
  const criterion = criteria.find((one) => one.id === criterionId(id));
  return criterion && { measure: id, criterion };
}
