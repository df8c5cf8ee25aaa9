import { differenceOf } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import { type Period, shifted } from "@/lib/records/period";
import type { Change } from "@/lib/views/change-words";

/** A quarter against the one before it and that of the year before, among one subject's figures of one measure. */
export function changesOf(figures: readonly Figure[], quarter: Period): Change[] {
  const at = (steps: number) =>
    figures.find((figure) => figure.period === shifted(quarter, steps).name);
  const now = at(0);
  if (!now) return [];
  return [at(-1), at(-4)].flatMap((before) =>
    before ? [{ now, before, difference: differenceOf(now, before) }] : [],
  );
}
