/**
 * What the charts draw, ready made: every number is placed and every word written in lib/views, so that a chart,
 * its table and what is heard of it say the same.
 */

/** An axis of values: its ends, where a line stands and what is written there. */
export type ChartAxis = {
  readonly min: number;
  readonly max: number;
  readonly ticks: readonly { readonly value: number; readonly words: string }[];
  /** What is measured, with its unit. */
  readonly title: string;
};

/** A line to compare with: a practice's median, a pooled rate, a target. */
export type ChartReference = { readonly value: number; readonly words: string };

/** The table beside a chart; the first column names the row. */
export type ChartTable = {
  readonly head: readonly string[];
  readonly rows: readonly { readonly id: string; readonly cells: readonly string[] }[];
};

/** One estimate with its interval, as a row of a plot. */
export type IntervalRow = {
  readonly id: string;
  /** Left of the row: whose it is. */
  readonly label: string;
  /** Null where there is nothing to estimate; then `missing` says why. Never 0 for missing. */
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** The interval that allows for canals of one patient, where there is one; the axis has to reach to its ends. */
  readonly outer?: { readonly lower: number; readonly upper: number };
  /** What the flags say of this row, after allowing for the number of figures. */
  readonly flag?: "look" | "look first";
  readonly missing?: string;
  /** What this row alone is compared with, where that differs from row to row. */
  readonly comparison?: number | null;
  /** Right of the row: the units it rests on. */
  readonly counts: string;
  /** The whole row in words, as it is read under the plot and heard. */
  readonly words: string;
  /** Where the records behind the point are listed. */
  readonly href?: string;
};

export type IntervalChart = {
  /** The finding, in a sentence. */
  readonly title: string;
  readonly axis: ChartAxis;
  /** What the counts at the right count. */
  readonly countsTitle: string;
  readonly rows: readonly IntervalRow[];
  readonly references: readonly ChartReference[];
  /** What a reader of the drawing has to be told: what a mark stands for, what is too few, whose codes have letters. */
  readonly notes?: readonly string[];
  readonly table: ChartTable;
};

/** One month of a line; a month without units has a null estimate and is drawn as a gap. */
export type MonthRow = {
  /** YYYY-MM. */
  readonly id: string;
  /** Under the axis, where there is room for it. */
  readonly label: string;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly words: string;
  readonly href?: string;
};

export type MonthsChart = {
  readonly title: string;
  readonly axis: ChartAxis;
  /** Oldest first, every month of the span. */
  readonly rows: readonly MonthRow[];
  readonly references: readonly ChartReference[];
  readonly table: ChartTable;
};

/** Units between two values, the upper end left out except in the last bin. */
export type SpreadBin = {
  readonly from: number;
  readonly until: number;
  readonly units: number;
  readonly words: string;
};

/** How a person's own units are spread, with their median, its interval and a line to compare with. */
export type SpreadRow = {
  readonly title: string;
  readonly axis: ChartAxis;
  readonly bins: readonly SpreadBin[];
  readonly median: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** The interval that allows for units of one patient, where there is one. */
  readonly outer?: { readonly lower: number; readonly upper: number };
  /** What is written at the median, as "yours 18.6 mL". */
  readonly medianWords: string;
  readonly reference: ChartReference | null;
  readonly table: ChartTable;
};
