import type { Difference } from "@/lib/audit/difference";
import type { Figure } from "@/lib/audit/figure";
import { sitsInNoPatient } from "@/lib/audit/sits-in-no-patient";
import { period } from "@/lib/records/period";
import { moreOrLess, signedRange } from "./difference-words";
import { periodWords } from "./period-words";

/** Two periods of one measure, and their difference where it has an interval. */
export type Change = {
  readonly now: Figure;
  readonly before: Figure;
  readonly difference: Difference | undefined;
};

/** What changed against an earlier period, with its interval, and whether so many units settle it. */
export function changeWords({ now, before, difference }: Change): string {
  const against = `Against ${periodNamed(before.period)}`;
  if (now.estimate === null || before.estimate === null)
    return `${against}: nothing to compare, as one of the two has no estimate.`;
  // A difference of plain intervals would look settled sooner than it is.
  const allowed = sitsInNoPatient(now) || (now.clustered && before.clustered);
  if (!difference || !allowed)
    return `${against}: too few patients in one of the two for an interval of the difference.`;
  const ends = `95 % interval ${signedRange(now, difference)}`;
  return `${against}: ${moreOrLess(now, difference.estimate)} (${ends}): ${difference.settled ? "more than chance easily gives" : "not settled by this many"}.`;
}

function periodNamed(name: string): string {
  const found = period(name);
  return found ? periodWords(found) : name;
}
