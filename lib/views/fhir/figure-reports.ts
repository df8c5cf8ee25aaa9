import type * as r4 from "fhir/r4";
import type { Figure } from "@/lib/audit/figure";
import type { AdherenceReport } from "../adherence-report";
import { measureOfFigure } from "./measure-of-figure";
import { measureReport } from "./measure-report";

/** Reports with the measures that they are of; a measure may come more than once. */
export type Reported = {
  readonly measures: readonly r4.Measure[];
  readonly reports: readonly r4.MeasureReport[];
};

type Of = {
  readonly period: AdherenceReport["period"];
  /** The address of a practice's entry. */
  readonly addressOf: (practice: string) => string;
};

/** A report for each figure of a practice, with its chairs as strata; figures of anything else have none of their own. */
export function practiceReports(figures: readonly Figure[], { period, addressOf }: Of): Reported {
  const pairs = figures.flatMap((figure) => {
    const { about } = figure;
    if (about.kind !== "practice") return [];
    const chairs = figures.filter(
      (one) =>
        one.measure === figure.measure &&
        one.about.kind === "chair" &&
        one.about.practice === about.code,
    );
    const measure = measureOfFigure(figure);
    const reporter = addressOf(about.code);
    return { measure, report: measureReport({ measure, figure, period, reporter, chairs }) };
  });
  return apart(pairs);
}

/** A report for each figure, of whoever has the address; no practice is said, which could tell who that is. */
export function subjectReports(
  figures: readonly Figure[],
  period: AdherenceReport["period"],
  subject: string,
): Reported {
  return apart(
    figures.map((figure) => {
      const measure = measureOfFigure(figure);
      return { measure, report: measureReport({ measure, figure, period, subject }) };
    }),
  );
}

/** Measures and reports each in a list of their own. */
export function apart(
  pairs: readonly { readonly measure: r4.Measure; readonly report: r4.MeasureReport }[],
): Reported {
  return {
    measures: pairs.map(({ measure }) => measure),
    reports: pairs.map(({ report }) => report),
  };
}
