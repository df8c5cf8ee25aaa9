import type { Figure } from "@/lib/audit/figure";
import type { ByReason } from "@/lib/measures/tally";
import { valueWords } from "./figure-line";
import { intervalMethod } from "./interval-method";
import { unitName } from "./measure-words";
import { atMostWords, noneSeen } from "./none-seen";
import { count } from "./quantity";
import { reasonWords } from "./reason-words";

/** A figure in the columns of a table, each in words. */
export type FigureCells = {
  readonly estimate: string;
  /** The estimate is words on why there is none. */
  readonly missing: boolean;
  readonly interval: string;
  /** The interval that allows for units of one patient; empty where there is none. */
  readonly clustered: string;
  readonly counts: string;
  readonly leftOut: string;
  readonly notRecorded: string;
};

/** The columns' heads, in their order. */
export const figureHeads = [
  "Estimate",
  "95 % interval",
  "Allowing for patients",
  "Counts",
  "Left out",
  "Not recorded",
] as const;

export function figureCells(figure: Figure): FigureCells {
  const { estimate, interval } = figure;
  return {
    estimate:
      estimate === null
        ? (figure.why ?? "nothing to estimate")
        : noneSeen(figure)
          ? "none"
          : valueWords(figure, estimate),
    missing: estimate === null,
    interval: noneSeen(figure)
      ? atMostWords(figure)
      : interval
        ? `${valueWords(figure, interval.lower)} to ${valueWords(figure, interval.upper)}`
        : "too few to tell",
    clustered: figure.clustered
      ? noneSeen(figure)
        ? `up to ${valueWords(figure, figure.clustered.upper)}`
        : `${valueWords(figure, figure.clustered.lower)} to ${valueWords(figure, figure.clustered.upper)}`
      : "",
    counts: shortCounts(figure),
    leftOut:
      [reasonsInWords(figure.excluded), excepted(figure.excepted)].filter(Boolean).join("; ") ||
      "none",
    notRecorded: count(figure.notRecorded),
  };
}

/** The cells in the order of the heads. */
export function cellsInOrder(figure: Figure): string[] {
  const cells = figureCells(figure);
  return [
    cells.estimate,
    cells.interval,
    cells.clustered || "none",
    cells.counts,
    cells.leftOut,
    cells.notRecorded,
  ];
}

/** "140 canals", or "3 of 295 uses". */
export function shortCounts(figure: Figure): string {
  if (figure.kind === "median") return `${count(figure.n)} ${unitName(figure, figure.n)}`;
  return `${count(figure.numerator)} of ${count(figure.denominator)} ${unitName(figure, figure.denominator)}`;
}

/** "12 abandoned, 3 emergency treatment", the most first; empty where nothing is left out. */
export function reasonsInWords(units: ByReason): string {
  return Object.entries(units)
    .sort(([, one], [, other]) => other - one)
    .map(([reason, number]) => `${count(number)} ${reasonWords(reason)}`)
    .join(", ");
}

/** How the intervals of these figures are made, in words; empty where none has one. */
export function methodWords(figures: readonly Figure[]): string {
  const methods = [...new Set(figures.flatMap((figure) => figure.interval?.method ?? []))];
  return methods.map(intervalMethod).join(", ");
}

function excepted(units: ByReason): string {
  const words = reasonsInWords(units);
  return words && `excepted: ${words}`;
}
