import type { Figure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import type { Subject } from "@/lib/measures/tally";
import { axisOf } from "./axis";
import type { ChartReference, IntervalChart, IntervalRow } from "./chart-rows";
import { outerLineWords } from "./clustered-words";
import { cellsInOrder, figureHeads } from "./figure-cells";
import { countWords, estimateWords } from "./figure-line";
import { titleOf, unitName } from "./measure-words";
import { count } from "./quantity";
import { subjectId } from "./subject-id";
import { subjectName } from "./subject-name";
import { letterWords, toldApart } from "./told-apart";

export type IntervalChartOf = {
  readonly measure: Measured;
  /** One a row; drawn in the order of their codes, never in that of their values. */
  readonly figures: readonly Figure[];
  readonly references: readonly ChartReference[];
  /** The finding in words. */
  readonly title: string;
  /** What the flags say of a figure, where they were worked out. */
  readonly flagOf?: (figure: Figure) => IntervalRow["flag"] | null;
  /** Where the records behind a figure are. */
  readonly hrefOf?: (figure: Figure) => string | undefined;
};

/** Figures of one measure as rows with intervals. */
export function intervalChart(of: IntervalChartOf): IntervalChart {
  const figures = inOrderOfCodes(of.figures);
  const nameOf = toldApart(figures, (figure) => rowLabel(figure.about));
  const rows = figures.map((figure) => rowOf(figure, nameOf(figure), of));
  const notes = notesOn(figures, rows, nameOf);
  const values = [
    ...rows.flatMap((row) => [row.estimate, row.lower, row.upper, row.comparison ?? null]),
    ...rows.flatMap((row) => (row.outer ? [row.outer.lower, row.outer.upper] : [])),
    ...of.references.map((one) => one.value),
  ];
  const rate = figures[0]?.kind === "rate";
  const unit = rate ? "share" : (figures[0]?.unit ?? "");
  return {
    title: of.title,
    axis: axisOf(
      values.filter((value) => value !== null),
      unit,
      axisTitle(of.measure, unit),
    ),
    countsTitle: unitName(of.measure, 2),
    rows,
    references: of.references,
    ...(notes.length > 0 ? { notes } : {}),
    table: {
      head: [wholeName(figures[0]?.about), ...figureHeads],
      rows: figures.map((figure) => ({
        id: subjectId(figure.about),
        cells: [nameOf(figure), ...cellsInOrder(figure)],
      })),
    },
  };
}

/** By code, then practice: the order of a rota, which says nothing of anyone's values. */
export function inOrderOfCodes<Of extends { readonly about: Subject }>(
  figures: readonly Of[],
): Of[] {
  return [...figures].sort((one, other) =>
    rowLabel(one.about).localeCompare(rowLabel(other.about), "en", { numeric: true }),
  );
}

/** What an axis of the measure measures. */
export function axisTitle(measure: Measured, unit: string): string {
  const title = titleOf(measure);
  // Times carry their unit at each tick.
  return unit === "s" ? title : `${title}, ${unit === "share" ? "%" : unit}`;
}

/** How a subject is called beside a row. */
export function rowLabel(about: Subject): string {
  if (about.kind === "group") return "all practices";
  if (about.kind === "practice") return about.code;
  if (about.kind === "chair")
    return about.code.startsWith(about.practice) ? about.code : `${about.code}, ${about.practice}`;
  return about.practice ? `${about.code}, ${about.practice}` : about.code;
}

/** What a reader of the drawing has to be told. */
function notesOn(
  figures: readonly Figure[],
  rows: readonly IntervalRow[],
  nameOf: (figure: Figure) => string,
): string[] {
  return [
    rows.some((row) => typeof row.comparison === "number")
      ? "The short upright line in a row is what that clinician is compared with: see the table."
      : "",
    rows.some((row) => row.outer) ? outerLineWords : "",
    rows.some((row) => row.estimate !== null && row.lower === null)
      ? "A point without a line has too few units for an interval."
      : "",
    figures.some((figure) => nameOf(figure) !== rowLabel(figure.about)) ? letterWords : "",
  ].filter(Boolean);
}

function rowOf(figure: Figure, label: string, of: IntervalChartOf): IntervalRow {
  const flag = of.flagOf?.(figure);
  const href = of.hrefOf?.(figure);
  const { estimate, interval } = figure;
  const units =
    figure.kind === "median"
      ? count(figure.n)
      : `${count(figure.numerator)} of ${count(figure.denominator)}`;
  return {
    id: subjectId(figure.about),
    label,
    estimate,
    lower: interval?.lower ?? null,
    upper: interval?.upper ?? null,
    ...(figure.clustered
      ? { outer: { lower: figure.clustered.lower, upper: figure.clustered.upper } }
      : {}),
    ...(estimate === null ? { missing: figure.why ?? "nothing to estimate" } : {}),
    counts: units,
    ...(figure.reference ? { comparison: figure.reference.estimate } : {}),
    words: `${sentenceCase(subjectName(figure.about))}: ${estimateWords(figure)}; ${countWords(figure)}.${flag ? ` ${flag === "look" ? "Look" : "Look first"}.` : ""}`,
    ...(flag ? { flag } : {}),
    ...(href ? { href } : {}),
  };
}

function wholeName(about: Subject | undefined): string {
  return { clinician: "Clinician", practice: "Practice", chair: "Chair", group: "Group" }[
    about?.kind ?? "group"
  ];
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
