import type { Clock } from "../mapping/feed";
import type { FileLayout } from "../mapping/file-layout";

/** How sure a reading is. `certain`: nothing else fits the whole file. `likely`: something else could be meant. */
export type Sure = "certain" | "likely";

/** A part of the layout, and what was seen that speaks for it. */
export type Reading = {
  readonly about: "kind" | "encoding" | "separator" | "headerLine" | "decimal" | "sheet";
  readonly sure: Sure;
  /** In one sentence. */
  readonly why: string;
};

/** What the whole of a column holds. A cell counts under every shape that it fits. */
export type ColumnProfile = {
  readonly name: string;
  readonly cells: number;
  readonly empty: number;
  /** Each different text (trimmed) with how often, most frequent first. */
  readonly words: readonly { readonly text: string; readonly count: number }[];
  /** There are more different texts than are listed. */
  readonly manyWords: boolean;
  /** Rows whose cell is that of the row before. */
  readonly sameAsBefore: number;
  /** Of the cells that are not empty, how many fit each shape. */
  readonly fits: {
    /** A number, whichever its decimal sign. */
    readonly number: number;
    /** A length of time as 0:45 or 0:02:45. */
    readonly minutesSeconds: number;
    readonly hoursMinutesSeconds: number;
    readonly isoDuration: number;
    /** Days and moments by the order of the day; those that fit no cell are left out. */
    readonly times: readonly {
      readonly clock: Clock;
      readonly fits: number;
      readonly withTimeOfDay: number;
    }[];
    /** A time of day alone. */
    readonly timeOfDay24: number;
    readonly timeOfDay12: number;
    readonly canal: number;
    readonly tooth: Readonly<Record<"fdi" | "universal" | "palmer", number>>;
  };
};

/** A file as understood by looking at all of it. */
export type Recognised = {
  readonly layout: FileLayout;
  readonly readings: readonly Reading[];
  /** The sheets of a workbook that have rows; none of other kinds. */
  readonly sheets: readonly string[];
  /** Numbers as 1.234 alone: it cannot be told whether the mark is that of the decimals, and must be asked. */
  readonly decimalUnsettled: string | null;
  readonly columns: readonly ColumnProfile[];
  readonly rows: number;
  /** The first rows below the header, by column name. */
  readonly firstRows: readonly Readonly<Record<string, string>>[];
  /** Lines that could not be cut into the header's columns. */
  readonly ragged: number;
};
