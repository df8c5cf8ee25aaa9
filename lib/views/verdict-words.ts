import type { RateFigure } from "@/lib/audit/figure";
import { chosenPercent } from "./chosen-percent";
import { unitName } from "./measure-words";
import { count } from "./quantity";

/** A verdict as it is read: the shape that goes with it, and words that need no shape. */
export type Verdict = {
  readonly mark: "met" | "missed" | "open" | "missing";
  readonly words: string;
};

/** Whether the target was reached in these records, whatever chance does. */
export function inTheseRecords(figure: RateFigure): Verdict {
  if (figure.inTheseRecords === "reached") return { mark: "met", words: "target reached" };
  if (figure.inTheseRecords === "not reached")
    return { mark: "missed", words: "target not reached" };
  return { mark: "missing", words: notAssessable(figure) };
}

/** Whether it is settled beyond what chance brings. */
export function beyondChance(figure: RateFigure): Verdict {
  if (figure.beyondChance === "reached") return { mark: "met", words: "reached" };
  if (figure.beyondChance === "missed") return { mark: "missed", words: "missed" };
  if (figure.beyondChance === "not settled by this many") {
    return {
      mark: "open",
      words: `not settled by ${count(figure.denominator)} ${unitName(figure, figure.denominator)}`,
    };
  }
  return { mark: "missing", words: notAssessable(figure) };
}

/** Why there is no verdict. */
function notAssessable(figure: RateFigure): string {
  if (figure.estimate === null) return "nothing to assess";
  const floor = figure.criterion?.completenessFloor ?? null;
  if (figure.inTheseRecords !== "not assessable" || floor === null) return "not assessed";
  const recorded = figure.denominator - figure.notRecorded;
  return `not assessable: ${count(recorded)} of ${count(figure.denominator)} recorded, ${chosenPercent(floor)} is the least`;
}
