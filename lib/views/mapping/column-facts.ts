import type { ClockDraft } from "./draft";

/** What is known of a column of the file and may be shown of any: no word of it. */
export type ColumnFacts = {
  readonly name: string;
  /** Cells that are not empty. */
  readonly filled: number;
  readonly empty: number;
  /** Different texts; null where there are more than were counted. */
  readonly different: number | null;
  readonly numbers: number;
  readonly minutesSeconds: number;
  readonly hoursMinutesSeconds: number;
  readonly isoDurations: number;
  readonly clocks: readonly { readonly clock: ClockDraft; readonly fits: number }[];
  /** Times of day alone, for a second column of a moment. */
  readonly timesOfDay24: number;
  readonly timesOfDay12: number;
  readonly teeth: Readonly<Record<string, number>>;
};

/** The clocks by which every cell of a column can be read. */
export function clocksOf({ clocks, filled }: ColumnFacts): ClockDraft[] {
  return clocks.filter(({ fits }) => fits === filled && filled > 0).map(({ clock }) => clock);
}
