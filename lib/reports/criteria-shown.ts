import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { criteriaWithin } from "@/lib/protocol/protocol";
import { dayAfter, type Period } from "@/lib/records/period";
import { protocolWithin } from "@/lib/store/protocol/versions";

/** The criteria in force at a practice on a day, in page order. */
export async function criteriaOn(
  reach: FiguresReach | OwnReach,
  practice: string,
  day: string,
): Promise<Criterion[]> {
  const on = { from: day, until: dayAfter(day, 1) };
  return criteriaWithin(await protocolWithin(reach), [practice], on);
}

/** The criteria that were in force within the reach on some day of the periods, in page order. */
export async function criteriaShown(
  reach: FiguresReach | OwnReach,
  periods: readonly Period[],
): Promise<Criterion[]> {
  const days = periods.flatMap(({ from, until }) => [from, until]).sort();
  const [from, until] = [days[0] ?? "", days.at(-1) ?? ""];
  const practices = "practices" in reach ? reach.practices : null;
  return criteriaWithin(await protocolWithin(reach), practices, { from, until });
}
