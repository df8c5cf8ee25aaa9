import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { adherenceFinding } from "./adherence-finding";
import { flagOf } from "./beyond-chance";
import { columnBlocks } from "./column-blocks";
import { day } from "./day";
import { inOrderOfCodes, rowLabel } from "./interval-chart";
import { measureAddress } from "./lead-address";
import { count, percent, setShare } from "./quantity";
import { subjectId } from "./subject-id";
import { letterWords, toldApart } from "./told-apart";
import type { Verdict } from "./verdict-words";

/** Criteria in rows against clinicians, or chairs, in columns; in blocks of columns that fit a sheet. */
export type AdherenceMatrix = {
  /** What it comes to. */
  readonly finding: string;
  readonly parts: readonly MatrixPart[];
  /** What a reader has to be told. */
  readonly notes: readonly string[];
};

export type MatrixPart = {
  readonly id: "clinicians" | "chairs";
  readonly title: string;
  /** What the column of the whole is called. */
  readonly wholeName: string;
  readonly blocks: readonly MatrixBlock[];
};

export type MatrixBlock = {
  readonly id: string;
  readonly label: string;
  readonly columns: readonly { readonly id: string; readonly name: string }[];
  readonly rows: readonly MatrixRow[];
};

export type MatrixRow = {
  readonly measure: string;
  readonly title: string;
  readonly href: string;
  /** "target 95 %", or that there is no single one. */
  readonly target: string;
  /** Other versions that began within the period; empty where none did. */
  readonly changed: string;
  readonly whole: MatrixCell;
  /** One for each of the block's columns. */
  readonly cells: readonly MatrixCell[];
};

export type MatrixCell = {
  readonly id: string;
  /** Null where there are no units. */
  readonly counted: {
    /** The rate; empty where nothing is counted. */
    readonly rate: string;
    /** "50 of 52" */
    readonly counts: string;
    readonly state: Verdict;
    /** "look" or "look first", as the flags have it. */
    readonly flag: string | null;
    /** The records that did not meet it, else those not recorded, else all. */
    readonly href: string;
  } | null;
};

export type MatrixOf = {
  readonly period: Period;
  /** What the whole is called. */
  readonly whole: string;
  /** In page order. */
  readonly criteria: readonly Criterion[];
  /** By group, and by clinician or chair. */
  readonly figures: readonly Figure[];
  readonly flags: PageFlags;
  readonly filters: Readonly<Record<string, string | undefined>>;
};

/** Every criterion against everybody it is of, in the order of the rota and never ranked. */
export function adherenceMatrix(of: MatrixOf): AdherenceMatrix {
  const rates = of.figures.filter((figure): figure is RateFigure => figure.kind === "rate");
  const wholes = of.criteria.flatMap(
    (criterion) => figureOfWhole(rates, criterionMeasure(criterion)) ?? [],
  );
  const clinicians = inOrderOfCodes(rates.filter(({ about }) => about.kind === "clinician"));
  const nameOf = toldApart(clinicians, ({ about }) => rowLabel(about));
  const lettered = clinicians.some((figure) => nameOf(figure) !== rowLabel(figure.about));
  return {
    finding: adherenceFinding(wholes, of.period),
    parts: [
      partOf("clinicians", "By clinician", clinicians, nameOf, rates, of),
      partOf(
        "chairs",
        "By chair: what staff and equipment do together",
        inOrderOfCodes(rates.filter(({ about }) => about.kind === "chair")),
        ({ about }) => rowLabel(about),
        rates,
        of,
      ),
    ].flatMap((part) => part ?? []),
    notes: [
      "In each cell: the share met, met of counted, and whether the target was reached in these records, which says nothing of chance. What is not recorded counts as not met. In the order of the codes, never ranked.",
      "Figures are of this period alone. Where units are few, a criterion's own page opens on four quarters.",
      ...(lettered ? [letterWords] : []),
    ],
  };
}

function partOf(
  id: MatrixPart["id"],
  title: string,
  figures: readonly RateFigure[],
  nameOf: (figure: RateFigure) => string,
  rates: readonly RateFigure[],
  of: MatrixOf,
): MatrixPart | null {
  const criteria = of.criteria.filter((one) => one.byClinician === (id === "clinicians"));
  if (criteria.length === 0) return null;
  const columns = [
    ...new Map(
      figures.map((figure) => [
        subjectId(figure.about),
        { id: subjectId(figure.about), name: nameOf(figure) },
      ]),
    ).values(),
  ];
  const rows = criteria.map((criterion) => {
    const measure = criterionMeasure(criterion);
    const some = figures.filter((figure) => figure.measure === measure);
    return {
      ...rowOf(criterion, figureOfWhole(rates, measure), of),
      cells: columns.map((column) =>
        cellOf(
          column.id,
          some.find(({ about }) => subjectId(about) === column.id),
          of,
        ),
      ),
    };
  });
  const blocks = columnBlocks(columns.length).map(({ from, until }) => {
    const [first, last] = [columns[from]?.name, columns[until - 1]?.name];
    const which = !first ? "" : first === last ? `, ${first}` : `, ${first} to ${last}`;
    return {
      id: `${id} ${from}`,
      label: `Criteria by ${id === "clinicians" ? "clinician" : "chair"}${which}`,
      columns: columns.slice(from, until),
      rows: rows.map((row) => ({ ...row, cells: row.cells.slice(from, until) })),
    };
  });
  return { id, title, wholeName: of.whole, blocks };
}

function rowOf(
  criterion: Criterion,
  whole: RateFigure | undefined,
  of: MatrixOf,
): Omit<MatrixRow, "cells"> {
  const measure = criterionMeasure(criterion);
  const differ = whole !== undefined && whole.target === undefined;
  const changed = whole?.changedOn ?? [];
  return {
    measure,
    title: criterion.title,
    href: measureAddress(measure, { ...of.filters, span: "quarter" }),
    target: differ ? "targets differ" : `target ${setShare(criterion.target)}`,
    changed: changed.length > 0 ? `changed on ${changed.map(day).join(", ")}` : "",
    whole: cellOf("whole", whole, of),
  };
}

function cellOf(id: string, figure: RateFigure | undefined, of: MatrixOf): MatrixCell {
  if (!figure || figure.population === 0) return { id, counted: null };
  const { about, estimate, numerator, denominator, notMet, notRecorded } = figure;
  const outcome = notMet > 0 ? "not-met" : notRecorded > 0 ? "not-recorded" : undefined;
  const practice = about.kind === "chair" ? about.practice : of.filters.practice;
  const clinician = about.kind === "clinician" ? about.key : undefined;
  return {
    id,
    counted: {
      rate: estimate === null ? "" : percent(estimate),
      counts: estimate === null ? "" : `${count(numerator)} of ${count(denominator)}`,
      state: stateOf(figure),
      flag: flagOf(of.flags, figure) ?? null,
      href: measureAddress(
        figure.measure,
        { ...of.filters, practice, span: "quarter", clinician, outcome },
        "#records",
      ),
    },
  };
}

function stateOf({ estimate, inTheseRecords }: RateFigure): Verdict {
  if (estimate === null) return { mark: "missing", words: "nothing to assess" };
  if (inTheseRecords === "reached") return { mark: "met", words: "reached" };
  if (inTheseRecords === "not reached") return { mark: "missed", words: "not reached" };
  if (inTheseRecords === "not assessable") return { mark: "missing", words: "not assessable" };
  return { mark: "open", words: "no one target" };
}

function figureOfWhole(rates: readonly RateFigure[], measure: string): RateFigure | undefined {
  return rates.find((figure) => figure.measure === measure && figure.about.kind === "group");
}
