import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { type Comparison, noComparison } from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import { type Period, rollingYear } from "@/lib/records/period";
import { unitName } from "@/lib/views/measure-words";
import { periodWords } from "@/lib/views/period-words";
import { count } from "@/lib/views/quantity";
import { subjectId } from "@/lib/views/subject-id";
import { figures } from "./figures";
import { type Compared, withReferences } from "./reference";

/** A clinician's own figure, what it is compared with, and a note where it is not of the page's period. */
export type OwnFigure = {
  readonly figure: Figure;
  readonly comparison: Comparison;
  readonly note: string | null;
};

/** Rates with fewer units in the period open on four rolling quarters (the design's rule for small rates). */
const fewForRate = 60;

/**
 * A clinician's figures of the period with their comparisons, or those of each clinician within a lead's reach; rates of few units over
 * four rolling quarters.
 */
export async function ownFigures(
  reach: FiguresReach | OwnReach,
  measures: readonly string[],
  of: Period,
): Promise<OwnFigure[]> {
  const quarter = await figures(reach, {
    measures,
    periods: [of],
    by: ["clinician"],
  });
  const few = quarter.filter((figure) => figure.kind === "rate" && figure.denominator < fewForRate);
  const year = rollingYear(of);
  const rolled =
    few.length === 0 || year.from >= of.from
      ? []
      : await figures(reach, {
          measures: [...new Set(few.map(({ measure }) => measure))],
          periods: [year],
          by: ["clinician"],
        });
  const shown = quarter.map((figure) => {
    if (!few.includes(figure)) return figure;
    return rolled.find((other) => sameAs(other, figure)) ?? figure;
  });
  const compared = await withReferences(reach, shown);
  return compared.map((figure, place) => ({
    figure,
    comparison: (figure as Compared).reference ?? noComparison(""),
    note: figure.period === of.name ? null : rolledNote(quarter[place], of, year),
  }));
}

function sameAs(one: Figure, other: Figure): boolean {
  return one.measure === other.measure && subjectId(one.about) === subjectId(other.about);
}

function rolledNote(quarter: Figure | undefined, of: Period, year: Period): string {
  const units = quarter?.kind === "rate" ? quarter.denominator : 0;
  return `Only ${count(units)} ${unitName(quarter ?? { measure: "volume" }, units)} in ${periodWords(of)}, so four quarters are shown together: ${periodWords(year)}.`;
}
