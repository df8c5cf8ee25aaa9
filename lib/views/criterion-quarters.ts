import type { RateFigure } from "@/lib/audit/figure";
import { period } from "@/lib/records/period";
import { type AdherenceLine, adherenceLine } from "./adherence-line";
import { chosenPercent } from "./chosen-percent";
import { periodWords } from "./period-words";

/** Where a rate, its interval and the target stand on a line, in per cent of its length. */
export type RateDrawing = {
  readonly lower: number;
  readonly upper: number;
  readonly estimate: number;
  readonly target: number;
};

export type QuarterLine = AdherenceLine & {
  readonly quarter: string;
  /** In the address. */
  readonly name: string;
  readonly chosen: boolean;
  /** null where there is nothing to estimate. */
  readonly drawing: RateDrawing | null;
};

/** A criterion over quarters, all drawn on one scale. */
export type CriterionQuarters = {
  readonly lines: readonly QuarterLine[];
  /** The ends of the scale in words. */
  readonly from: string;
  readonly to: string;
};

/** The quarters of one criterion, oldest first, on a scale that holds every interval and ends at 100 %. */
export function criterionQuarters(
  figures: readonly RateFigure[],
  chosen: string,
): CriterionQuarters {
  const values = figures.flatMap((figure) => [figure.interval?.lower ?? 1, figure.target ?? 1]);
  // A tenth below the lowest value, in whole tenths: intervals do not touch the edge.
  const from = Math.max(0, Math.floor(Math.min(...values, 0.9) * 10 - 0.2) / 10);
  return {
    from: chosenPercent(from),
    to: chosenPercent(1),
    lines: figures.map((figure) => ({
      ...adherenceLine(figure),
      quarter: quarterWords(figure.period),
      name: figure.period,
      chosen: figure.period === chosen,
      drawing: drawingOf(figure, from),
    })),
  };
}

function drawingOf(figure: RateFigure, from: number): RateDrawing | null {
  if (figure.estimate === null || !figure.interval) return null;
  const at = (share: number) => Number((((share - from) / (1 - from)) * 100).toFixed(2));
  return {
    lower: at(figure.interval.lower),
    upper: at(figure.interval.upper),
    estimate: at(figure.estimate),
    target: at(figure.target ?? 1),
  };
}

function quarterWords(name: string): string {
  const found = period(name);
  return found ? periodWords(found) : name;
}
