import type { Figure, MedianFigure, RateFigure } from "@/lib/audit/figure";
import { tooFewToTell } from "@/lib/audit/too-few-to-tell";
import { valueWords } from "./figure-line";
import { unitName } from "./measure-words";
import { count, percent, quantity } from "./quantity";

/** What a clinician's own figure comes to, in one sentence told to the clinician. */
export function ownFinding(figure: Figure): string {
  if (figure.kind === "median") return medianFinding(figure);
  return figure.criterion ? criterionFinding(figure) : separationFinding(figure);
}

/** The estimate on its own; no event is said as none, never as a rate of 0 %. */
export function ownEstimate(figure: Figure): string {
  if (figure.estimate === null) return "no estimate";
  if (figure.kind === "rate" && figure.numerator === 0 && !figure.criterion)
    return `none in ${count(figure.denominator)}`;
  return valueWords(figure, figure.estimate);
}

/** What none seen still allows, by the rule of three; null where something was seen. */
export function ruleOfThree(figure: Figure): string | null {
  if (
    figure.kind !== "rate" ||
    figure.criterion ||
    figure.numerator > 0 ||
    figure.denominator === 0
  )
    return null;
  const { denominator, clustered } = figure;
  const units = `none in ${count(denominator)} ${unitName(figure, denominator)}`;
  const apart = `Rule of three: ${units} speaks against a rate above about 3 in ${count(denominator)}`;
  // None seen tells nothing of likeness, so that both ends of it are said.
  return clustered && clustered.clusters < denominator
    ? `${apart} if ${unitName(figure, 2)} of one patient are unrelated, but only against one above about 3 in ${count(clustered.clusters)}, the number of your patients, if they are wholly alike; and against no lower one.`
    : `${apart}, and against no lower one.`;
}

function medianFinding(figure: MedianFigure): string {
  if (figure.estimate === null) return figure.why ?? "Nothing to estimate.";
  const units = `${count(figure.n)} recorded ${unitName(figure, figure.n)}`;
  const half = `Half of your ${units} had ${quantity(figure.estimate, figure.unit)} or more`;
  if (figure.n === 1)
    return `One recorded ${unitName(figure, 1)} of yours: ${quantity(figure.estimate, figure.unit)}. Too few to tell.`;
  return tooFewToTell(figure) ? `${half}; that is too few to tell.` : `${half}.`;
}

function separationFinding(figure: RateFigure): string {
  const { numerator, denominator } = figure;
  // The interval to read: what fits the records has to allow for units of one patient.
  const interval = figure.clustered ?? figure.interval;
  if (figure.estimate === null || !interval) return figure.why ?? "Nothing to estimate.";
  const units = `${count(denominator)} ${unitName(figure, denominator)}`;
  if (numerator === 0) {
    return `None in your ${units}. That is not a rate of 0 %: anything up to ${percent(interval.upper)} fits these records.`;
  }
  return `${count(numerator)} in your ${units}, ${percent(figure.estimate)}; anything from ${percent(interval.lower)} to ${percent(interval.upper)} fits these records.`;
}

function criterionFinding(figure: RateFigure): string {
  if (figure.estimate === null) return figure.why ?? "Nothing to assess.";
  const { numerator, denominator, notMet, notRecorded } = figure;
  const rest = [
    notMet > 0 ? `${count(notMet)} not met` : "",
    notRecorded > 0 ? `${count(notRecorded)} not recorded` : "",
  ].filter(Boolean);
  const met = `Met in ${count(numerator)} of your ${count(denominator)} ${unitName(figure, denominator)}, ${percent(figure.estimate)}`;
  return rest.length > 0 ? `${met}; ${rest.join(", ")}.` : `${met}.`;
}
