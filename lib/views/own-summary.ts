import type { Comparison } from "@/lib/audit/comparison";
import type { Difference } from "@/lib/audit/difference";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { level } from "@/lib/audit/level";
import { ownDifference } from "@/lib/audit/own-difference";
import { tooFewToTell } from "@/lib/audit/too-few-to-tell";
import { moreOrLess, rangeMoreOrLess } from "./difference-words";
import { valueWords } from "./figure-line";
import { titleOf, unitName } from "./measure-words";
import { shortName } from "./own-comparison";
import { ownEstimate } from "./own-finding";
import { count } from "./quantity";
import { inTheseRecords } from "./verdict-words";

/** One sentence of the summary; `href` leads to where it is shown in full. */
export type SummaryLine = {
  readonly id: string;
  readonly href: string | null;
  readonly title: string;
  readonly words: string;
  readonly look: boolean;
};

type Own = { readonly figure: Figure; readonly comparison: Comparison };
type Told = Own & { readonly difference: Difference };

/**
 * What a clinician's page comes to: first the settled differences, what chance does to so many, then the criteria. What
 * has few units in the quarter is told over four, and its line says so.
 *
 * @param quarter the name of the period that the page is of
 */
export function ownSummary(own: readonly Own[], quarter: string): SummaryLine[] {
  const told = own.filter(({ figure }) => !tooFewToTell(figure));
  const compared = told.flatMap((one): Told[] => {
    const difference = ownDifference(one.figure, one.comparison);
    return typeof difference === "string" ? [] : [{ ...one, difference }];
  });
  const untold = told.filter(
    ({ figure, comparison }) => ownDifference(figure, comparison) === "too-few-patients",
  );
  const settled = compared.filter(({ difference }) => difference.settled);
  const criteria = told.flatMap(({ figure }) =>
    figure.kind === "rate" && figure.criterion ? [criterionLine(figure, quarter)] : [],
  );
  return [
    ...settled.map((one) => settledLine(one, quarter)),
    ...chanceLine(compared, settled.length, untold.length, quarter),
    ...criteria,
  ];
}

function settledLine({ figure, comparison, difference }: Told, quarter: string): SummaryLine {
  const other = comparison.estimate === null ? "" : valueWords(figure, comparison.estimate);
  const units = figure.kind === "median" ? figure.n : figure.denominator;
  return {
    id: `difference ${figure.measure}`,
    href: addressOf(figure),
    title: titleWithin(figure, quarter),
    words: `yours ${ownEstimate(figure)} (${count(units)} ${unitName(figure, units)}), ${shortName(comparison)} ${other} (${count(comparison.n)}): ${moreOrLess(figure, difference.estimate)}, 95 % interval ${rangeMoreOrLess(figure, difference)}, outside what chance alone easily gives`,
    look: true,
  };
}

function chanceLine(
  told: readonly Told[],
  settled: number,
  untold: number,
  quarter: string,
): SummaryLine[] {
  const compared = told.length;
  if (compared === 0)
    return untold === 0
      ? []
      : [chance("none could be judged, as too few patients stand behind them")];
  const left =
    untold === 0 ? "" : `. Too few patients stand behind another ${count(untold)} to judge`;
  const those = compared === 1 ? "One difference was" : `${count(compared)} differences were`;
  const wide = told.filter(({ figure }) => figure.period !== quarter).length;
  const spans =
    wide === 0
      ? ""
      : wide === compared
        ? ", over four quarters"
        : `, ${count(compared - wide)} of this quarter and ${count(wide)} over four`;
  const apart =
    settled === 0
      ? "these records tell none apart"
      : `${count(settled)} outside what chance alone easily gives`;
  // Not rounded to whole ones: 0.05 of 9 is neither none nor one.
  const byChance = Number((compared * (1 - level)).toFixed(2));
  return [
    chance(
      `${those} judged${spans}: ${apart}. Where nobody differs chance alone would set about ${byChance} of ${count(compared)} outside; this page makes no adjustment for how many there are${left}`,
    ),
  ];
}

function chance(words: string): SummaryLine {
  return { id: "chance", href: null, title: "All comparisons", words, look: false };
}

function criterionLine(figure: RateFigure, quarter: string): SummaryLine {
  const missed = figure.notMet + figure.notRecorded;
  const list =
    missed === 0 ? "none to look at" : `${count(missed)} ${unitName(figure, missed)} to look at`;
  return {
    id: figure.measure,
    href: addressOf(figure),
    title: titleWithin(figure, quarter),
    words: `${inTheseRecords(figure).words} in these records, ${list}`,
    look: figure.inTheseRecords === "not reached",
  };
}

function titleWithin(figure: Figure, quarter: string): string {
  return `${titleOf(figure)}${figure.period === quarter ? "" : ", over four quarters"}`;
}

function addressOf({ measure }: Figure): string {
  return `#${measure.replace("/", "-")}`;
}
