import type { Comparison } from "@/lib/audit/comparison";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { criterionOf } from "@/lib/protocol/criteria";
import { valueWords } from "./figure-line";
import { titleOf, unitName } from "./measure-words";
import { shortName } from "./own-comparison";
import { ownEstimate, tooFewToTell } from "./own-finding";
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

/** What a clinician's page comes to: first what lies outside, then what to look at in the criteria, and what chance does. */
export function ownSummary(own: readonly Own[]): SummaryLine[] {
  const told = own.filter(({ figure }) => !tooFewToTell(figure));
  const measures = told.filter(
    ({ figure, comparison }) =>
      !criterionOf(figure.measure) && figure.interval && comparison.estimate !== null,
  );
  const outside = measures.filter(isOutside);
  const criteria = told.flatMap(({ figure }) =>
    figure.kind === "rate" && criterionOf(figure.measure) ? [criterionLine(figure)] : [],
  );
  return [...outside.map(outsideLine), ...restLine(measures.length, outside.length), ...criteria];
}

function isOutside({ figure, comparison }: Own): boolean {
  const { interval } = figure;
  return (
    interval !== null &&
    comparison.estimate !== null &&
    (comparison.estimate < interval.lower || comparison.estimate > interval.upper)
  );
}

function outsideLine({ figure, comparison }: Own): SummaryLine {
  const other = comparison.estimate === null ? "" : valueWords(figure, comparison.estimate);
  return {
    id: figure.measure,
    href: `#${figure.measure}`,
    title: titleOf(figure.measure),
    words: `yours ${ownEstimate(figure)} (${unitsWords(figure)}), ${shortName(comparison)} ${other} (${count(comparison.n)}), outside your interval`,
    look: true,
  };
}

/** "68 canals, 95 % interval 17.0 mL to 20.9 mL" */
function unitsWords(figure: Figure): string {
  const units = figure.kind === "median" ? figure.n : figure.denominator;
  const ends = figure.interval
    ? `, 95 % interval ${valueWords(figure, figure.interval.lower)} to ${valueWords(figure, figure.interval.upper)}`
    : "";
  return `${count(units)} ${unitName(figure.measure, units)}${ends}`;
}

function restLine(all: number, outside: number): SummaryLine[] {
  if (all === 0) return [];
  const inside = all - outside;
  const title = outside === 0 ? "All measures" : "Other measures";
  const told =
    inside === 0
      ? "none other can be compared"
      : `${count(inside)} compared, the other value inside your interval in each`;
  const chance = "By chance alone one such comparison in twenty, or more, lies outside";
  return [{ id: "rest", href: null, title, words: `${told}. ${chance}`, look: false }];
}

function criterionLine(figure: RateFigure): SummaryLine {
  const missed = figure.notMet + figure.notRecorded;
  const list =
    missed === 0
      ? "none to look at"
      : `${count(missed)} ${unitName(figure.measure, missed)} to look at`;
  return {
    id: figure.measure,
    href: `#${figure.measure.replace("/", "-")}`,
    title: titleOf(figure.measure),
    words: `${inTheseRecords(figure).words} in these records, ${list}`,
    look: figure.inTheseRecords === "not reached",
  };
}
