import type { ByReason } from "@/lib/measures/tally";
import type { JudgedCounts } from "./preview-view";

/** The counts of several practices together. */
export function addedUp(parts: readonly JudgedCounts[]): JudgedCounts {
  const sum = (of: (counts: JudgedCounts) => number) =>
    parts.reduce((total, one) => total + of(one), 0);
  return {
    population: sum(({ population }) => population),
    met: sum(({ met }) => met),
    notMet: sum(({ notMet }) => notMet),
    notRecorded: sum(({ notRecorded }) => notRecorded),
    excluded: byReason(parts.map(({ excluded }) => excluded)),
    excepted: byReason(parts.map(({ excepted }) => excepted)),
  };
}

function byReason(parts: readonly ByReason[]): ByReason {
  const reasons = [...new Set(parts.flatMap((part) => Object.keys(part)))].sort();
  return Object.fromEntries(
    reasons.map((reason) => [
      reason,
      parts.reduce((total, part) => total + (part[reason] ?? 0), 0),
    ]),
  );
}
