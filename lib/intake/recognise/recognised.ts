import type { Clock } from "../mapping/feed";
import type { FileLayout } from "../mapping/file-layout";

/** How sure a reading is. `certain`: nothing else fits the whole file. `likely`: something else could be meant. */
export type Sure = "certain" | "likely";

/** A part of the layout with what else was possible. */
export type Reading = {
  readonly about:
    | "encoding"
    | "separator"
    | "quote"
    | "headerLine"
    | "decimal"
    | "thousands"
    | "sheet";
  readonly sure: Sure;
  /** In one sentence for a receptionist: what was seen. */
  readonly why: string;
};

/** Something that can be read in two ways and must be asked, never guessed. */
export type Doubt = {
  /** As "day-order", "decimal", "tooth-notation" and the column where it is of one. */
  readonly about: "day-order" | "decimal" | "tooth-notation";
  readonly column?: string;
  /** The question, with an example from the file. */
  readonly question: string;
  readonly readings: readonly { readonly value: string; readonly words: string }[];
};

/** What the whole of a column holds. A cell counts under every shape that it fits. */
export type ColumnProfile = {
  readonly name: string;
  readonly cells: number;
  readonly empty: number;
  /** Each different text (trimmed) with how often, most frequent first; no more than `wordsKept`. */
  readonly words: readonly { readonly text: string; readonly count: number }[];
  /** True where there are more different texts than are listed. */
  readonly manyWords: boolean;
  /** Of the cells that are not empty, how many fit each shape. */
  readonly fits: {
    /** A number in the file's notation (decimal sign and thousands of the layout). */
    readonly number: number;
    readonly whole: number;
    /** min:s or h:min:s as a length of time, e.g. 0:45. */
    readonly minutesSeconds: number;
    readonly isoDuration: number;
    /** A day or moment, by the order of the day. */
    readonly times: readonly {
      readonly clock: Clock;
      readonly fits: number;
      readonly timeOfDay: boolean;
    }[];
    /** A time of day alone, 24 or 12 hours. */
    readonly timeOfDay: number;
    readonly canal: number;
    readonly tooth: Readonly<Record<"fdi" | "universal" | "palmer", number>>;
  };
  /** Least and greatest of the cells that are numbers. */
  readonly least?: number;
  readonly most?: number;
  /** Does one text stand on several rows that follow each other, as a visit's number on each of its canals; share of rows equal to the row before. */
  readonly sameAsBefore: number;
};

/** A file as understood by looking at all of it. */
export type Recognised = {
  readonly layout: FileLayout;
  readonly readings: readonly Reading[];
  readonly doubts: readonly Doubt[];
  readonly columns: readonly ColumnProfile[];
  readonly rows: number;
  /** The first rows below the header, by column name. */
  readonly firstRows: readonly Readonly<Record<string, string>>[];
  /** Lines that could not be cut into the header's columns. */
  readonly ragged: number;
  /** Of a workbook, all its sheets' names. */
  readonly sheets?: readonly string[];
};
