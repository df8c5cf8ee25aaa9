import type { CaseMix, Standardised } from "@/lib/audit/case-mix";
import type { RateFigure } from "@/lib/audit/figure";
import { type FigureRow, figureRow } from "./figure-row";
import { inOrderOfCodes, rowLabel } from "./interval-chart";
import { unitName } from "./measure-words";
import { count, decimal, percent } from "./quantity";
import { stratumWords } from "./stratum-words";
import { subjectId } from "./subject-id";
import { toldApart } from "./told-apart";

/** Observed against expected by clinician, and the cells that what is expected comes from. */
export type CaseMixView = {
  readonly rows: readonly {
    readonly id: string;
    readonly name: string;
    readonly observed: string;
    readonly expected: string;
    readonly ratio: string;
    readonly interval: string;
    /** What is left out, and whether the clinician is much of the reference. */
    readonly notes: string;
  }[];
  readonly cells: readonly FigureRow[];
  readonly notes: readonly string[];
};

/** Over so large a share of the reference a clinician is compared with themselves in good part. */
const muchOfReference = 0.2;
const leastUnits = 20;

export function caseMixView(measure: string, mix: CaseMix): CaseMixView {
  const figures = inOrderOfCodes(mix.standardised.map(({ figure }) => figure));
  const nameOf = toldApart(figures, (figure) => rowLabel(figure.about));
  const inOrder = figures.flatMap((figure) =>
    mix.standardised.filter((one) => one.figure === figure),
  );
  const recorded = mix.cells.some((cell) => caseOf(cell)?.curvature);
  return {
    rows: inOrder.map((one) => ({
      id: subjectId(one.figure.about),
      name: nameOf(one.figure),
      ...rowOf(measure, one),
    })),
    cells: mix.cells.map((cell) => {
      const name = cell.stratum ? stratumWords(cell.stratum) : "";
      const row = figureRow(cell, name);
      return { ...row, id: name, whole: false };
    }),
    notes: [
      "Expected: what the clinician's cases would have come to at the rates of everyone shown for the same tooth group, class of curvature and first treatment or retreatment. A ratio of 1 is as expected.",
      `A cell of fewer than ${leastUnits} units, or with nobody else's, is too thin to standardise and is left out of both.`,
      "How a canal was prepared is the clinician's choice and no part of the case: it is not adjusted for.",
      ...(recorded ? [] : ["Curvature is recorded for no canal here, so it adjusts for nothing."]),
    ],
  };
}

function rowOf(measure: string, one: Standardised) {
  const { observed, expected, ratio, interval, leftOut, share } = one;
  const thin =
    leftOut.units > 0
      ? `${count(leftOut.units)} ${unitName({ measure }, leftOut.units)} in ${count(leftOut.cells)} thin ${leftOut.cells === 1 ? "cell" : "cells"}, ${leftOut.events === 0 ? "none" : count(leftOut.events)} separated`
      : "";
  const own =
    share > muchOfReference
      ? `is ${percent(share)} of those compared with, which draws it to 1`
      : "";
  return {
    observed: count(observed),
    expected: decimal(expected, 2),
    ratio: ratio === null ? "nothing expected" : decimal(ratio, 2),
    interval: interval ? `${decimal(interval.lower, 2)} to ${decimal(interval.upper, 2)}` : "none",
    notes: [thin, own].filter(Boolean).join("; ") || "none",
  };
}

function caseOf(cell: RateFigure) {
  return cell.stratum?.by === "case" ? cell.stratum : undefined;
}
