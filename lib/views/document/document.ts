import type { IntervalChart, MonthsChart } from "../chart-rows";

/** A report to be read from front to back: the page that prints and the PDF are drawn from the same one. */
export type ReportDocument = {
  readonly title: string;
  /** Above the title: whose and of when. */
  readonly over: string;
  /** BCP 47, as en-GB. */
  readonly language: string;
  /** What must be known of the whole: scope, period, cut-off, version, fingerprint. */
  readonly facts: readonly DocumentFact[];
  /** The first page, for whoever reads no further. */
  readonly summary: readonly DocumentBlock[];
  readonly parts: readonly DocumentPart[];
  /** At the foot of every sheet. */
  readonly foot: string;
};

export type DocumentFact = { readonly name: string; readonly words: string };

/** A part with its own bookmark. */
export type DocumentPart = {
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  readonly blocks: readonly DocumentBlock[];
  /** Has tables that want a sheet on its side. */
  readonly wide?: boolean;
};

export type DocumentBlock =
  | { readonly kind: "words"; readonly words: string; readonly soft?: boolean }
  | { readonly kind: "heading"; readonly words: string }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | { readonly kind: "facts"; readonly facts: readonly DocumentFact[] }
  | DocumentTable
  | { readonly kind: "intervals"; readonly chart: IntervalChart }
  | { readonly kind: "months"; readonly chart: MonthsChart };

export type DocumentTable = {
  readonly kind: "table";
  /** What the table is, for those who hear it. */
  readonly label: string;
  readonly columns: readonly DocumentColumn[];
  /** The first cell names the row; as many cells as columns. */
  readonly rows: readonly { readonly id: string; readonly cells: readonly string[] }[];
};

export type DocumentColumn = {
  readonly title: string;
  readonly numeric?: boolean;
  /** Its part of the width, beside the others' (1 where absent). */
  readonly share?: number;
};
