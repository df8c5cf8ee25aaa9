import type { FiguresReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { upkeepDays, upkeepSpans } from "@/lib/store/quality/upkeep-days";
import { practicesWithin } from "@/lib/store/records/practices";
import type { UpkeepRow } from "@/lib/views/upkeep-state";
import { localDay } from "./protocol/local-day";

/** The tasks that every practice has from the start. */
export const firstTasks: readonly string[] = ["line-rinse", "line-dry"];

/**
 * The days of a task in the period. A task that a practice added, or that its records name, is asked of that practice
 * alone: from the day on which it was added, or first written down, and of a retired one up to the day it was written
 * down last. Its other days say that it was not asked for.
 */
export async function upkeepAsked(
  reach: FiguresReach,
  period: Period,
  task: string,
): Promise<UpkeepRow[]> {
  const rows = await upkeepDays(reach, period, task);
  if (firstTasks.includes(task)) return rows;
  const spans = await askedSpans(reach, task);
  return rows.flatMap((row) => {
    const span = spans.get(row.practice);
    if (!span) return row.devices.length > 0 ? [row] : [];
    const asked = row.day >= span.from && (span.to === null || row.day <= span.to);
    return [{ ...row, asked }];
  });
}

/** By practice, from which day on it is asked for, and (null: to this day) up to which. */
async function askedSpans(
  reach: FiguresReach,
  task: string,
): Promise<ReadonlyMap<string, { readonly from: string; readonly to: string | null }>> {
  const [written, terms, practices] = await Promise.all([
    upkeepSpans(reach, task),
    ownTerms(reach),
    practicesWithin(reach),
  ]);
  const zoneOf = new Map(practices.map(({ code, zone }) => [code, zone]));
  const spans = new Map(
    written.map(({ practice, first, last }) => [
      practice,
      { from: first, to: last as string | null },
    ]),
  );
  for (const { practice, kind, code, at, retired } of terms) {
    if (kind !== "task" || code !== task) continue;
    const recorded = spans.get(practice);
    const added = localDay(zoneOf.get(practice) ?? "UTC", at);
    if (retired && !recorded) continue;
    const from = recorded && recorded.from < added ? recorded.from : added;
    spans.set(practice, { from, to: retired ? (recorded?.to ?? null) : null });
  }
  return spans;
}
