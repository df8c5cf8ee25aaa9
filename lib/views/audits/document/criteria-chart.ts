import type { AuditComputed } from "@/lib/audit/cycle/audit-content";
import type { RateFigure } from "@/lib/audit/figure";
import { adherenceFinding } from "../../adherence-finding";
import { axisOf } from "../../axis";
import type { IntervalChart } from "../../chart-rows";
import { outerLineWords } from "../../clustered-words";
import { cellsInOrder, figureHeads } from "../../figure-cells";
import { countWords, estimateWords } from "../../figure-line";
import { titleOf } from "../../measure-words";
import { count } from "../../quantity";

/** Every criterion of the whole as a row beside its target, in page order: the audit at a glance. */
export function criteriaChart({ adherence, practices, period }: AuditComputed): IntervalChart {
  const kind = practices.length > 1 ? "group" : "practice";
  const wholes = adherence.filter(
    (figure): figure is RateFigure => figure.kind === "rate" && figure.about.kind === kind,
  );
  return {
    title: adherenceFinding(wholes, period),
    axis: axisOf([0, 1], "share", "Met, %"),
    countsTitle: "units met",
    rows: wholes.map((figure) => ({
      id: figure.measure,
      label: titleOf(figure),
      estimate: figure.estimate,
      lower: figure.interval?.lower ?? null,
      upper: figure.interval?.upper ?? null,
      ...(figure.clustered
        ? { outer: { lower: figure.clustered.lower, upper: figure.clustered.upper } }
        : {}),
      ...(figure.estimate === null ? { missing: figure.why ?? "nothing to estimate" } : {}),
      comparison: figure.target ?? null,
      counts: `${count(figure.numerator)} of ${count(figure.denominator)}`,
      words: `${titleOf(figure)}: ${estimateWords(figure)}; ${countWords(figure)}.`,
    })),
    references: [],
    notes: ["The short upright line in a row is its target.", outerLineWords],
    table: {
      head: ["Criterion", ...figureHeads],
      rows: wholes.map((figure) => ({
        id: figure.measure,
        cells: [titleOf(figure), ...cellsInOrder(figure)],
      })),
    },
  };
}
