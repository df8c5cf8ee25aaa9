import type { Comparison } from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import type { ChartReference } from "./chart-rows";
import { valueWords } from "./figure-line";
import { unitName } from "./measure-words";
import { count } from "./quantity";

/**
 * What a clinician's figure is compared with, told to the clinician: which comparison it is, its value, and where it
 * lies beside their interval. Nothing is said that the intervals do not carry.
 */
export function ownComparison(figure: Figure, comparison: Comparison): string {
  if (comparison.estimate === null)
    return `There is nothing to compare it with. ${comparison.why ?? ""}`.trim();
  const value = valueWords(figure, comparison.estimate);
  const whose = `${subjectOf(figure, comparison)} is ${value} (${count(comparison.n)} ${figure.kind === "median" ? "recorded " : ""}${unitName(figure.measure, comparison.n)})`;
  return figure.interval ? `${whose}${placeBeside(figure, comparison)}` : `${whose}.`;
}

/** The line to compare with in a chart; null where there is none. */
export function ownReferenceLine(figure: Figure, comparison: Comparison): ChartReference | null {
  if (comparison.estimate === null) return null;
  return {
    value: comparison.estimate,
    words: `${lineName(comparison)} ${valueWords(figure, comparison.estimate)}`,
  };
}

/** Whom the comparison is with, in two or three words. */
export function shortName(comparison: Comparison): string {
  return {
    practice: "practice without you",
    peers: "your peer group",
    own: "your year before",
    none: "no comparison",
  }[comparison.kind];
}

/** The same at a line in a chart, where room is short and the sentence beside it says the rest. */
function lineName(comparison: Comparison): string {
  return comparison.kind === "practice" ? "practice" : shortName(comparison);
}

function subjectOf(figure: Figure, comparison: Comparison): string {
  const what = figure.kind === "median" ? "median" : "rate";
  if (comparison.kind === "own")
    return `Too few others stand behind a comparison, so it is with yourself: your own ${what} of the four quarters before`;
  if (comparison.kind === "peers")
    return `Too few others in the practice stand behind a comparison, so it is with all practices: the ${what} of the other clinicians of your peer group`;
  const several = figure.about.kind === "clinician" && figure.about.practice === undefined;
  return several
    ? `The ${what} of your practices without you`
    : `The practice's ${what} without you`;
}

function placeBeside(figure: Figure, comparison: Comparison): string {
  const { interval } = figure;
  if (!interval || comparison.estimate === null) return ".";
  if (comparison.estimate >= interval.lower && comparison.estimate <= interval.upper) {
    return ". That lies inside your interval: these records do not tell the two apart.";
  }
  const where = comparison.estimate < interval.lower ? "under" : "above";
  const other = comparison.interval;
  const overlap = other !== null && other.lower <= interval.upper && other.upper >= interval.lower;
  return overlap
    ? `. That lies ${where} your interval, but the two intervals overlap: worth a look, not settled.`
    : `. That lies ${where} your interval, and the two intervals do not meet: worth a look. Units of one patient resemble each other, which the intervals do not allow for.`;
}
