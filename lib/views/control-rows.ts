import type { ChartAxis, ChartTable } from "./chart-rows";

/** One point of a line over time; a period without a value is a gap. */
export type ControlRow = {
  readonly id: string;
  /** Under the axis, where there is room for it; empty where not. */
  readonly label: string;
  readonly value: number | null;
  /** The line and limits by which this point is judged; null where there are none. */
  readonly centre: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly outside: "above" | "below" | null;
  readonly words: string;
  readonly href?: string;
};

/** A measure over time with what chance alone would draw: centre line, limits, signals, and where limits begin anew. */
export type ControlChart = {
  /** The finding, in a sentence. */
  readonly title: string;
  readonly axis: ChartAxis;
  /** Which chart it is and why, in a sentence. */
  readonly kind: string;
  readonly rows: readonly ControlRow[];
  /** Rows at which limits begin anew, and why. */
  readonly rebased: readonly { readonly id: string; readonly words: string }[];
  /** Signals in words; empty where there is none. */
  readonly signals: readonly string[];
  readonly notes: readonly string[];
  readonly table: ChartTable;
};

/** A running sum over treated canals, one point a canal or every so many, and the limit at which it signals. */
export type CusumChart = {
  readonly title: string;
  readonly across: ChartAxis;
  readonly up: ChartAxis;
  /** Ascending in canals; the sum begins again at 0 after a signal, so that a place may stand twice. */
  readonly path: readonly { readonly canals: number; readonly sum: number }[];
  readonly limit: { readonly value: number; readonly words: string };
  /** Points to walk along: events and signals. */
  readonly points: readonly {
    readonly id: string;
    readonly canals: number;
    readonly sum: number;
    readonly signal: boolean;
    readonly words: string;
    readonly href?: string;
  }[];
  readonly notes: readonly string[];
  readonly table: ChartTable;
};
