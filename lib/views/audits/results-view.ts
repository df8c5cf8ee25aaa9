import { type ActedOn, actedOn } from "@/lib/audit/cycle/acted-on";
import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import { flagsOf } from "@/lib/audit/cycle/to-look-at";
import { moreOrLess, rangeMoreOrLess } from "../difference-words";
import { estimateWords } from "../figure-line";
import { type LeadQuarter, leadQuarterView } from "../lead-quarter";
import { titleOf } from "../measure-words";
import { periodWords } from "../period-words";
import { subjectId } from "../subject-id";
import { subjectName } from "../subject-name";

/** The results as the lead's pages show a quarter. */
export function resultsView({ form, computed }: AuditContent): LeadQuarter {
  return leadQuarterView({
    period: computed.period,
    practice: form.practice ?? undefined,
    practices: computed.practices,
    months: [],
    weeks: computed.weeks,
    held: [],
    disagreeing: [],
    lastDay: computed.lastDay,
    completeness: computed.completeness,
    criteria: computed.criteria,
    adherence: computed.adherence,
    began: new Map(Object.entries(computed.began)),
    across: computed.across,
    composites: computed.composites,
    empty: computed.people.length === 0,
    flags: flagsOf(computed),
    ofMonths: [],
  });
}

/** What became of a measure that an earlier action was about. */
export type ActedOnLine = {
  readonly id: string;
  readonly action: string;
  readonly measure: string;
  readonly about: string;
  readonly before: string;
  readonly now: string;
  /** after − before with its interval, or why there is none. */
  readonly change: string;
};

/** Before and after of all that earlier actions were about. */
export function actedOnLines({ computed, work }: AuditContent): ActedOnLine[] {
  return actedOn(computed, work.earlier).map((one) => ({
    id: `${one.action.id} ${one.measure} ${subjectId(one.now.about)}`,
    action: one.action.what,
    measure: titleOf(one.now),
    about: subjectName(one.now.about),
    before: estimateWords(one.before),
    now: estimateWords(one.now),
    change: changeOf(one),
  }));
}

/** Which two periods stand beside each other; empty where the audit repeats none. */
export function beforeAndNow({ computed }: AuditContent): string {
  return computed.earlier
    ? `${periodWords(computed.earlier.period)}, then ${periodWords(computed.period)}`
    : "";
}

function changeOf({ now, difference }: ActedOn): string {
  if (!difference) return "one of the two has no estimate or no interval";
  const settled = difference.settled
    ? "more than chance easily gives"
    : "not told apart by this many";
  return `${moreOrLess(now, difference.estimate)}, 95 % interval ${rangeMoreOrLess(now, difference)}: ${settled}`;
}
