import type { RunsFound } from "@/lib/audit/over-time";
import { count } from "./quantity";

/** What runs around the median say, by the two rules of Anhøj & Olesen 2014; empty where they say nothing. */
export function runWords(runs: RunsFound): string[] {
  const { useful, longestRun, longestRunLimit, crossings, crossingsLimit } = runs;
  return [
    ...(runs.longRun
      ? [
          `${count(longestRun)} points in a row lie on one side of the median; of ${count(useful)} points chance seldom puts over ${count(longestRunLimit ?? 0)} in a row.`,
        ]
      : []),
    ...(runs.fewCrossings
      ? [
          `The line ${crossings === 0 ? "never crosses its median" : `crosses its median ${crossings === 1 ? "once" : `${count(crossings)} times`}`}; with ${count(useful)} points chance seldom leaves it at fewer than ${count(crossingsLimit ?? 0)}.`,
        ]
      : []),
  ];
}
