import type { MaskedFigure } from "@/lib/audit/disclosure/masked-figure";
import type { RateFigure } from "@/lib/audit/figure";
import type { Period } from "@/lib/records/period";
import { adherenceFinding } from "./adherence-finding";
import { axisOf } from "./axis";
import type { IntervalChart, IntervalRow } from "./chart-rows";
import { outerLineWords } from "./clustered-words";
import { cellsInOrder, figureHeads } from "./figure-cells";
import { countWords, estimateWords } from "./figure-line";
import { titleOf } from "./measure-words";
import { count } from "./quantity";

/** Every criterion of the whole as a row beside its target, in the order given: a period at a glance. */
export function criteriaChart(
  wholes: readonly (RateFigure | MaskedFigure)[],
  period: Period,
): IntervalChart {
  return {
    title: adherenceFinding(wholes, period),
    axis: axisOf([0, 1], "share", "Met, %"),
    countsTitle: "units met",
    rows: wholes.map((figure) => (figure.population === null ? maskedRow(figure) : rowOf(figure))),
    references: [],
    notes: ["The short upright line in a row is its target.", outerLineWords],
    table: {
      head: ["Criterion", ...figureHeads],
      rows: wholes.map((figure) => ({
        id: figure.measure,
        cells: [titleOf(figure), ...cellsOf(figure)],
      })),
    },
  };
}

function rowOf(figure: RateFigure): IntervalRow {
  const { clustered } = figure;
  return {
    id: figure.measure,
    label: titleOf(figure),
    estimate: figure.estimate,
    lower: figure.interval?.lower ?? null,
    upper: figure.interval?.upper ?? null,
    ...(clustered ? { outer: { lower: clustered.lower, upper: clustered.upper } } : {}),
    ...(figure.estimate === null ? { missing: figure.why ?? "nothing to estimate" } : {}),
    comparison: figure.target ?? null,
    counts: `${count(figure.numerator)} of ${count(figure.denominator)}`,
    words: `${titleOf(figure)}: ${estimateWords(figure)}; ${countWords(figure)}.`,
  };
}

function maskedRow(figure: MaskedFigure): IntervalRow {
  return {
    id: figure.measure,
    label: titleOf(figure),
    ...{ estimate: null, lower: null, upper: null, missing: figure.why, counts: "masked" },
    words: `${titleOf(figure)}: ${figure.why}.`,
  };
}

function cellsOf(figure: RateFigure | MaskedFigure): string[] {
  return figure.population === null
    ? [figure.why, ...figureHeads.slice(1).map(() => "masked")]
    : cellsInOrder(figure);
}
