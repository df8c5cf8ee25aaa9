import type { ChartAxis, ChartTable } from "./chart-rows";

/** One clinician on a funnel: how many units, which rate. */
export type FunnelPoint = {
  readonly id: string;
  /** Beside the point. */
  readonly label: string;
  readonly units: number;
  readonly estimate: number;
  /** What the flags say, after allowing for the number of figures; never read off the lines. */
  readonly flag: "look" | "look first" | null;
  /** The whole point in words, as it is read under the drawing and heard. */
  readonly words: string;
  readonly href?: string;
};

/** The limits at a number of units, clipped to what a rate can be. */
export type FunnelLimit = {
  readonly units: number;
  readonly lower95: number;
  readonly upper95: number;
  readonly lower998: number;
  readonly upper998: number;
};

/** Every clinician's rate against their number of units, with the limits that chance alone draws around the pooled rate. */
export type FunnelChart = {
  /** The finding, in a sentence. */
  readonly title: string;
  /** Units, along the bottom, from 0. */
  readonly across: ChartAxis;
  /** The rate, upwards. */
  readonly up: ChartAxis;
  readonly centre: { readonly value: number; readonly words: string };
  /** Ascending in units; empty where there is no rate to draw limits around. */
  readonly limits: readonly FunnelLimit[];
  readonly points: readonly FunnelPoint[];
  readonly notes: readonly string[];
  readonly table: ChartTable;
};
