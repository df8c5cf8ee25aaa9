import type { Comparison } from "@/lib/audit/comparison";
import type { Figure, MedianFigure, RateFigure } from "@/lib/audit/figure";
import { measureOf } from "@/lib/measures/measures";
import { axisOf } from "./axis";
import type { ChartAxis, IntervalChart, IntervalRow, SpreadRow } from "./chart-rows";
import { clusteredWords, outerLineWords } from "./clustered-words";
import { countWords, intervalWords, valueWords } from "./figure-line";
import { definitionOf, populationOf, sourceOf, titleOf, unitName } from "./measure-words";
import { ownComparison, ownReferenceLine, shortName } from "./own-comparison";
import { ownEstimate, ownFinding, ruleOfThree } from "./own-finding";
import { ownSeen } from "./own-seen";
import { count } from "./quantity";

/** One measure of a clinician, as they read it. */
export type OwnStrip = {
  readonly measure: string;
  readonly title: string;
  readonly finding: string;
  readonly comparison: string;
  /** Which period the figure is of, where that is not the page's; what none seen still allows; what could have been seen. */
  readonly notes: readonly string[];
  readonly estimate: string | null;
  readonly interval: string;
  /** Which interval to read, and how much wider it is. */
  readonly read: string;
  readonly counts: string;
  readonly about: {
    readonly definition: string;
    readonly population: string;
    readonly source: string;
  };
  readonly spread: SpreadRow | null;
  readonly plot: IntervalChart | null;
};

/** A measure's strip; `drawing` is what is drawn of it. */
export function ownStrip(
  figure: Figure,
  comparison: Comparison,
  note: string | null,
  drawing: Pick<OwnStrip, "spread" | "plot">,
): OwnStrip {
  const { measure } = figure;
  return {
    measure,
    title: titleOf(figure),
    finding: ownFinding(figure),
    comparison: figure.estimate === null ? "" : ownComparison(figure, comparison),
    notes: [note, ruleOfThree(figure), ownSeen(figure, comparison)].filter((one) => one !== null),
    estimate: figure.estimate === null ? null : ownEstimate(figure),
    interval: intervalWords(figure, figure.interval),
    read: clusteredWords(figure),
    counts: countWords(figure),
    about: {
      definition: definitionOf(figure),
      population: populationOf(figure),
      source: sourceOf(figure),
    },
    ...drawing,
  };
}

/** Bins that a measure's units are counted in: a fifth of the axis's step wide, over the whole axis. */
export function spreadBins(
  measure: string,
  lowest: number,
  highest: number,
  comparison: Comparison,
) {
  const axis = spreadAxis(measure, lowest, highest, comparison);
  const [first, second] = axis.ticks;
  const width = first && second ? (second.value - first.value) / 5 : axis.max - axis.min;
  return {
    axis,
    bins: {
      measure,
      from: axis.min,
      width,
      count: Math.max(1, Math.round((axis.max - axis.min) / width)),
    },
  };
}

/** A clinician's own units as they are spread, with their median and the line to compare with. */
export function spreadRow(
  figure: MedianFigure,
  comparison: Comparison,
  axis: ChartAxis,
  width: number,
  units: readonly number[],
): SpreadRow {
  const { interval, estimate, clustered } = figure;
  const words = (value: number) => valueWords(figure, value);
  const bins = units.map((some, place) => {
    const from = axis.min + place * width;
    const range = `${words(from)} to ${words(from + width)}`;
    return {
      from,
      until: from + width,
      units: some,
      words: `${range}: ${count(some)} ${unitName(figure, some)}`,
    };
  });
  return {
    title: `Your ${unitName(figure, 2)} as they are spread`,
    axis,
    bins,
    median: estimate,
    lower: interval?.lower ?? null,
    upper: interval?.upper ?? null,
    ...(clustered ? { outer: { lower: clustered.lower, upper: clustered.upper } } : {}),
    medianWords: estimate === null ? "" : `yours ${words(estimate)}`,
    reference: ownReferenceLine(figure, comparison),
    table: {
      head: ["From", "To", unitName(figure, 2)],
      rows: bins.map((bin) => ({
        id: String(bin.from),
        cells: [words(bin.from), words(bin.until), count(bin.units)],
      })),
    },
  };
}

/** A clinician's rate and the one it is compared with, as two rows. */
export function ratePlot(figure: RateFigure, comparison: Comparison): IntervalChart | null {
  if (figure.estimate === null) return null;
  const rows = [
    rateRow(figure, "yours", figure, `${count(figure.numerator)} of ${count(figure.denominator)}`),
    ...(comparison.estimate === null
      ? []
      : [rateRow(figure, shortName(comparison), comparison, count(comparison.n))]),
  ];
  const ends = rows.flatMap((row) => [row.estimate ?? 0, row.upper ?? 0, row.outer?.upper ?? 0]);
  return {
    title: `Your ${unitName(figure, 2)}${comparison.estimate === null ? "" : " and those beside them"}`,
    axis: axisOf(ends, "share", `share of ${unitName(figure, 2)}`, true),
    countsTitle: unitName(figure, 2),
    rows,
    references: [],
    ...(rows.some((row) => row.outer) ? { notes: [outerLineWords] } : {}),
    table: {
      head: ["Whose", "Rate and interval", unitName(figure, 2)],
      rows: rows.map(({ id, words, counts }) => ({ id, cells: [id, words, counts] })),
    },
  };
}

function rateRow(
  figure: RateFigure,
  label: string,
  of: Pick<RateFigure, "estimate" | "interval" | "clustered">,
  counts: string,
): IntervalRow {
  const { estimate, interval, clustered } = of;
  const allowing = clustered
    ? `; allowing for patients ${valueWords(figure, clustered.lower)} to ${valueWords(figure, clustered.upper)}`
    : "";
  return {
    id: label,
    label,
    estimate,
    lower: interval?.lower ?? null,
    upper: interval?.upper ?? null,
    ...(clustered ? { outer: { lower: clustered.lower, upper: clustered.upper } } : {}),
    counts,
    words:
      estimate === null
        ? "nothing to estimate"
        : `${label}: ${valueWords(figure, estimate)}, ${intervalWords(figure, interval)}${allowing}`,
  };
}

function spreadAxis(
  measure: string,
  lowest: number,
  highest: number,
  comparison: Comparison,
): ChartAxis {
  const { unit, title } = measureOf(measure);
  const values = [lowest, highest, ...(comparison.estimate === null ? [] : [comparison.estimate])];
  return axisOf(values, unit, unit === "s" ? title : `${title} (${unit})`);
}
