import type { RateFigure } from "@/lib/audit/figure";
import type { ByReason } from "@/lib/measures/tally";
import { chosenPercent } from "./chosen-percent";
import { intervalMethod } from "./interval-method";
import { unitName } from "./measure-words";
import { count, percent } from "./quantity";
import { reasonWords } from "./reason-words";
import { subjectName } from "./subject-name";
import { beyondChance, inTheseRecords, type Verdict } from "./verdict-words";

/** One figure of a criterion: its numbers as they go into a file, and its words as they are read. */
export type AdherenceLine = {
  readonly figure: RateFigure;
  readonly about: string;
  /** Units that are not left out, excepted ones among them. */
  readonly eligible: number;
  readonly leftOut: number;
  readonly excepted: number;
  readonly words: {
    readonly population: string;
    /** "12: 9 dressing only, 3 abandoned", "3 abandoned"; "0" where none. */
    readonly leftOut: string;
    readonly excepted: string;
    readonly eligible: string;
    readonly met: string;
    readonly notMet: string;
    readonly notRecorded: string;
    /** "412 of 431 canals" */
    readonly counts: string;
    /** The rate, or why there is none. */
    readonly rate: string;
    readonly interval: string;
    /** The interval without its level and method, for columns that name them. */
    readonly intervalEnds: string;
    readonly bounds: string;
  };
  readonly inTheseRecords: Verdict;
  readonly beyondChance: Verdict;
};

/** A criterion's figure as a line of the report. */
export function adherenceLine(figure: RateFigure): AdherenceLine {
  const leftOut = sum(figure.excluded);
  const excepted = sum(figure.excepted);
  return {
    figure,
    about: subjectName(figure.about),
    eligible: figure.population - leftOut,
    leftOut,
    excepted,
    words: {
      population: count(figure.population),
      leftOut: withReasons(leftOut, figure.excluded),
      excepted: withReasons(excepted, figure.excepted),
      eligible: count(figure.population - leftOut),
      met: count(figure.numerator),
      notMet: count(figure.notMet),
      notRecorded: count(figure.notRecorded),
      counts: `${count(figure.numerator)} of ${count(figure.denominator)} ${unitName(figure, figure.denominator)}`,
      rate:
        figure.estimate === null ? (figure.why ?? "nothing to estimate") : percent(figure.estimate),
      interval: intervalOf(figure),
      intervalEnds: endsOf(figure),
      bounds: boundsOf(figure),
    },
    inTheseRecords: inTheseRecords(figure),
    beyondChance: beyondChance(figure),
  };
}

function intervalOf(figure: RateFigure): string {
  const { interval } = figure;
  return interval
    ? `${endsOf(figure)} (${chosenPercent(interval.level)}, ${intervalMethod(interval.method)})`
    : endsOf(figure);
}

function endsOf({ interval, estimate }: RateFigure): string {
  if (!interval) return estimate === null ? "" : "too few for an interval";
  return `${percent(interval.lower)} to ${percent(interval.upper)}`;
}

function boundsOf({ bounds, notRecorded }: RateFigure): string {
  if (!bounds || notRecorded === 0) return "";
  return `${percent(bounds[0])} if none of the ${count(notRecorded)} not recorded was met, ${percent(bounds[1])} if all were`;
}

function withReasons(total: number, by: ByReason): string {
  if (total === 0) return "0";
  const parts = Object.entries(by)
    .sort(([, one], [, other]) => other - one)
    .map(([reason, units]) => `${count(units)} ${reasonWords(reason)}`);
  return parts.length === 1 ? (parts[0] ?? "") : `${count(total)}: ${parts.join(", ")}`;
}

function sum(by: ByReason): number {
  return Object.values(by).reduce((total, units) => total + units, 0);
}
