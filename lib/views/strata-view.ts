import type { Figure } from "@/lib/audit/figure";
import { acrossFinding } from "./across-finding";
import type { IntervalChart } from "./chart-rows";
import { valueWords } from "./figure-line";
import { type FigureRow, figureRow } from "./figure-row";
import { intervalChart } from "./interval-chart";
import { stratumWords } from "./stratum-words";

/** Like with like: a measure apart by preparation and delivery. */
export type StrataView = {
  /** Every stratum with a unit of the population, the largest first. */
  readonly rows: readonly FigureRow[];
  /** Across clinicians within a stratum, for the strata that are large enough to be drawn. */
  readonly charts: readonly IntervalChart[];
};

/** A stratum is drawn where it holds a tenth of the recorded units and at least two clinicians have units in it. */
const leastShare = 0.1;

export function strataView(measure: string, figures: readonly Figure[]): StrataView {
  const wholes = figures
    .filter(
      (figure) =>
        figure.kind === "median" &&
        figure.about.kind === "group" &&
        figure.n + figure.notRecorded > 0,
    )
    .sort((one, other) => unitsOf(other) - unitsOf(one));
  const all = wholes.reduce((sum, figure) => sum + unitsOf(figure), 0);
  return {
    rows: wholes.map((figure) => ({
      ...figureRow(figure, nameOf(figure)),
      id: nameOf(figure),
      whole: false,
    })),
    charts: wholes.flatMap((whole) => {
      const parts = figures.filter(
        (figure) =>
          figure.about.kind === "clinician" &&
          nameOf(figure) === nameOf(whole) &&
          figure.estimate !== null,
      );
      if (whole.estimate === null || parts.length < 2 || unitsOf(whole) < leastShare * all)
        return [];
      const line = {
        value: whole.estimate,
        words: `all of these ${valueWords(whole, whole.estimate)}`,
      };
      return [
        intervalChart({
          measure: { measure },
          figures: parts,
          references: [line],
          title: `${sentence(nameOf(whole))}. ${acrossFinding({ measure }, whole, parts)}`,
        }),
      ];
    }),
  };
}

function unitsOf(figure: Figure): number {
  return figure.kind === "median" ? figure.n : 0;
}

function nameOf(figure: Figure): string {
  return figure.stratum ? stratumWords(figure.stratum) : "";
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
