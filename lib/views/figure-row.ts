import type { Figure } from "@/lib/audit/figure";
import { clusteredWords } from "./clustered-words";
import { type FigureCells, figureCells } from "./figure-cells";
import { valueWords } from "./figure-line";
import { rowLabel } from "./interval-chart";
import { unitName } from "./measure-words";
import { count } from "./quantity";
import { subjectId } from "./subject-id";

/** A figure as a row of a table of figures. */
export type FigureRow = FigureCells & {
  readonly id: string;
  readonly name: string;
  /** The row is the whole of the others. */
  readonly whole: boolean;
  /** Which interval to read, in a sentence; empty where there is none. */
  readonly read: string;
  /** What it is compared with and what that comes to; absent where rows are not compared. */
  readonly compared?: string;
};

/** What a clinician's figure is compared with, as lib/audit/comparison makes it. */
type Reference = NonNullable<Figure["reference"]> & { readonly why?: string };

/** @param name what the row is called; its subject where absent */
export function figureRow(figure: Figure, name = rowLabel(figure.about)): FigureRow {
  const reference: Reference | undefined = figure.reference;
  return {
    id: `${subjectId(figure.about)} ${figure.period}`,
    name,
    whole: figure.about.kind === "group",
    ...figureCells(figure),
    read: clusteredWords(figure),
    ...(reference ? { compared: comparedWords(figure, reference) } : {}),
  };
}

function comparedWords(figure: Figure, reference: Reference): string {
  if (reference.estimate === null) return reference.why ?? reference.what;
  const interval = reference.interval
    ? `, 95 % interval ${valueWords(figure, reference.interval.lower)} to ${valueWords(figure, reference.interval.upper)}`
    : "";
  return `${reference.what}: ${valueWords(figure, reference.estimate)}${interval}, ${count(reference.n)} ${unitName(figure, reference.n)}`;
}
