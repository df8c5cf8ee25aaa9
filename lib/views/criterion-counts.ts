import type { RateFigure } from "@/lib/audit/figure";
import { rowLabel } from "./interval-chart";
import { count, percent } from "./quantity";
import { subjectId } from "./subject-id";
import { beyondChance, inTheseRecords, type Verdict } from "./verdict-words";

/** A criterion's four outcomes as counts, what not recorded leaves open, and both verdicts. */
export type CriterionCounts = {
  readonly id: string;
  readonly name: string;
  readonly whole: boolean;
  readonly met: string;
  readonly notMet: string;
  readonly excepted: string;
  readonly notRecorded: string;
  /** The rate were every unrecorded unit not met, and were it met. */
  readonly bounds: string;
  /** Null for a clinician: verdicts are on practices and chairs, never on a person. */
  readonly inTheseRecords: Verdict | null;
  readonly beyondChance: Verdict | null;
};

export function criterionCounts(figure: RateFigure): CriterionCounts {
  const excepted = Object.values(figure.excepted).reduce((sum, units) => sum + units, 0);
  const person = figure.about.kind === "clinician";
  const [low, high] = figure.bounds ?? [];
  return {
    id: subjectId(figure.about),
    name: rowLabel(figure.about),
    whole: figure.about.kind === "group",
    met: count(figure.numerator),
    notMet: count(figure.notMet),
    excepted: count(excepted),
    notRecorded: count(figure.notRecorded),
    bounds:
      low === undefined || high === undefined
        ? "nothing to estimate"
        : low === high
          ? percent(low)
          : `${percent(low)} to ${percent(high)}`,
    inTheseRecords: person ? null : inTheseRecords(figure),
    beyondChance: person ? null : beyondChance(figure),
  };
}
