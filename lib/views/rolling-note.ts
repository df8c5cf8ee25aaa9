import type { RateFigure } from "@/lib/audit/figure";
import { adherenceLine } from "./adherence-line";
import { unitName } from "./measure-words";
import { count } from "./quantity";

/** Under so many units a quarter's rate is read with its last four quarters (the design's rule for small rates). */
const fewUnits = 60;

/** Has the quarter so few units that the last four quarters are read with it. */
export function hasFewUnits(quarter: RateFigure | undefined): boolean {
  return quarter !== undefined && quarter.denominator > 0 && quarter.denominator < fewUnits;
}

/** The last four quarters in a sentence where the quarter itself has few units; null where it has enough or none. */
export function rollingNote(
  quarter: RateFigure | undefined,
  year: RateFigure | undefined,
): string | null {
  if (!quarter || !year || !hasFewUnits(quarter) || year.estimate === null) return null;
  const { words } = adherenceLine(year);
  return `Only ${count(quarter.denominator)} ${unitName(quarter, quarter.denominator)} here. Over the last four quarters: ${words.counts}, ${words.rate}, ${words.interval}.`;
}
