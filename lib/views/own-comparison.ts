import type { Comparison } from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import { type NoDifference, ownDifference } from "@/lib/audit/own-difference";
import type { ChartReference } from "./chart-rows";
import { moreOrLess, rangeMoreOrLess } from "./difference-words";
import { valueWords } from "./figure-line";
import { unitName } from "./measure-words";
import { count } from "./quantity";

/**
 * What a clinician's figure is compared with and how the two differ, in one sentence told to the clinician. Nothing is
 * said that the interval of the difference does not carry.
 */
export function ownComparison(figure: Figure, comparison: Comparison): string {
  if (comparison.estimate === null)
    return `There is nothing to compare it with. ${comparison.why ?? ""}`.trim();
  const value = valueWords(figure, comparison.estimate);
  const units = `${count(comparison.n)} ${figure.kind === "median" ? "recorded " : ""}${unitName(figure, comparison.n)}`;
  return `${subjectOf(figure, comparison)} is ${value} (${units})${besideIt(figure, comparison)}`;
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

function besideIt(figure: Figure, comparison: Comparison): string {
  const found = ownDifference(figure, comparison);
  if (typeof found === "string") return missing[found];
  const yours = `; yours is ${moreOrLess(figure, found.estimate)}`;
  const could = `${yours}, and the difference could be anything from ${rangeMoreOrLess(figure, found)} (95 % interval)`;
  return found.settled
    ? `${could}, which lies outside what chance alone easily gives: worth a look at records, cases and equipment before anything else.`
    : `${could}, so these records do not tell the two apart.`;
}

const missing: Readonly<Record<NoDifference, string>> = {
  "nothing-to-compare": ".",
  "too-few-units": "; with so few units of yours nothing is read into the difference.",
  "too-few-patients":
    "; too few patients stand behind one of the two to say how far chance alone would set them apart.",
  "no-variation":
    "; the values on both sides hardly vary, so that what chance does to the difference cannot be told.",
};
