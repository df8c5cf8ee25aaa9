import type { ComparedFigure } from "@/lib/audit/cycle/audit-content";
import type { RateFigure } from "@/lib/audit/figure";
import { titleOf, unitName } from "../measure-words";
import { count } from "../quantity";

const most = 5;

/**
 * Specific things that a clinician can do themselves, the most units first: what was not met, then what was not written down. Feedback that
 * names few and specific things is acted on (Brehaut and others 2016, Annals of Internal Medicine 164:435; from memory).
 */
export function withinControl(own: readonly ComparedFigure[]): string[] {
  const rates = own
    .map(({ figure }) => figure)
    .filter(
      (figure): figure is RateFigure => figure.kind === "rate" && figure.criterion !== undefined,
    );
  const unrecorded = rates
    .filter(({ notRecorded }) => notRecorded > 0)
    .sort((one, other) => other.notRecorded - one.notRecorded)
    .map(
      (figure) =>
        `${titleOf(figure)}: ${units(figure, figure.notRecorded)} without a record. Write it down during the visit; nothing is known of these either way.`,
    );
  const missed = rates
    .filter(({ notMet }) => notMet > 0)
    .sort((one, other) => other.notMet - one.notMet)
    .map(
      (figure) =>
        `${titleOf(figure)}: ${units(figure, figure.notMet)} not met. The demand is: ${figure.criterion?.statement} Where there was a good reason, enter the exception.`,
    );
  return [...missed.slice(0, most - Math.min(2, unrecorded.length)), ...unrecorded.slice(0, 2)];
}

function units(figure: RateFigure, how: number): string {
  return `${count(how)} of ${count(figure.denominator)} ${unitName(figure, figure.denominator)}`;
}
