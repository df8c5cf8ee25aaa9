import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { adherenceFinding } from "./adherence-finding";
import { columnBlocks } from "./column-blocks";
import { day } from "./day";
import { inOrderOfCodes, rowLabel } from "./interval-chart";
import { measureAddress } from "./lead-address";
import { type MatrixCell, matrixCell } from "./matrix-cell";
import { setShare } from "./quantity";
import { subjectId } from "./subject-id";
import { letterWords, toldApart } from "./told-apart";
import { unrecordedOfAll } from "./unrecorded-words";

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
  readonly columns: readonly MatrixColumn[];
  readonly rows: readonly MatrixRow[];
};

export type MatrixColumn = {
  readonly id: string;
  readonly name: string;
  /** What it adds to the address of a row's records (lib/views/cell-address). */
  readonly asks: string;
};

export type MatrixRow = {
  readonly measure: string;
  readonly title: string;
  /** The address of the criterion's page, to which column and cell add (lib/views/cell-address). */
  readonly href: string;
  /** "target 95 %", or that there is no single one. */
  readonly target: string;
  /** When it was changed, or only came into force, within the period; empty where neither. */
  readonly changed: string;
  readonly whole: MatrixCell;
  /** One for each of the block's columns. */
  readonly cells: readonly MatrixCell[];
};

export type MatrixOf = {
  readonly flags: PageFlags;
  readonly filters: Readonly<Record<string, string | undefined>>;
  readonly period: Period;
  /** What the whole is called. */
  readonly whole: string;
  /** In page order. */
  readonly criteria: readonly Criterion[];
  /** By group, and by clinician or chair. */
  readonly figures: readonly Figure[];
  /** By the id of a criterion, the days of the period on which it came into force where it was not before. */
  readonly began?: ReadonlyMap<string, readonly string[]>;
};

/** Every criterion against everybody it is of, in the order of the rota and never ranked. */
export function adherenceMatrix(of: MatrixOf): AdherenceMatrix {
  const rates = of.figures.filter((figure): figure is RateFigure => figure.kind === "rate");
  const wholes = of.criteria.flatMap(
    (criterion) => figureOfWhole(rates, criterionMeasure(criterion)) ?? [],
  );
  const clinicians = peopleIn(rates);
  const nameOf = toldApart(clinicians, ({ about }) => rowLabel(about));
  const lettered = clinicians.some((figure) => nameOf(figure) !== rowLabel(figure.about));
  const flagged = of.flags.flagged.some(
    ({ figure, flag }) => figure.criterion !== undefined && flag.tier !== null,
  );
  return {
    finding: adherenceFinding(wholes, of.period),
    parts: [
      partOf("clinicians", "By clinician", columnsOf(clinicians, nameOf, of), rates, of),
      partOf(
        "chairs",
        "By chair: what staff and equipment do together",
        columnsOf(
          inOrderOfCodes(rates.filter(({ about }) => about.kind === "chair")),
          ({ about }) => rowLabel(about),
          of,
        ),
        rates,
        of,
      ),
    ].flatMap((part) => part ?? []),
    notes: [
      `In each cell: the share met and met of counted. Whether the target was reached in these records is said of practices and chairs, never of a person, and says nothing of chance. ${unrecordedOfAll} In the order of the codes, never ranked.`,
      "Figures are of this period alone. Where units are few, a criterion's own page opens on four quarters.",
      ...(flagged
        ? [
            "“Look” and “look first” stand where a rate is beyond chance, as said above under “Beyond chance?”.",
          ]
        : []),
      ...(lettered ? [letterWords] : []),
    ],
  };
}

/**
 * A figure of each clinician, in the order of the rota. Where a person has several codes, that of a criterion may know
 * but some of them: the one that knows most speaks for all.
 */
function peopleIn(rates: readonly RateFigure[]): RateFigure[] {
  const people = new Map<string, RateFigure>();
  for (const figure of rates) {
    if (figure.about.kind !== "clinician") continue;
    const known = people.get(figure.about.key)?.about;
    if (known?.kind !== "clinician" || known.code.length < figure.about.code.length)
      people.set(figure.about.key, figure);
  }
  return inOrderOfCodes([...people.values()]);
}

function columnsOf(
  figures: readonly RateFigure[],
  nameOf: (figure: RateFigure) => string,
  { filters }: MatrixOf,
): MatrixBlock["columns"] {
  const columns = figures.map((figure) => ({
    id: subjectId(figure.about),
    name: nameOf(figure),
    asks: asksOf(figure.about, filters.practice),
  }));
  return [...new Map(columns.map((column) => [column.id, column])).values()];
}

function asksOf(about: Figure["about"], practice: string | undefined): string {
  const asked = new URLSearchParams();
  if (about.kind === "clinician") asked.set("clinician", about.key);
  if (about.kind === "chair") {
    if (!practice) asked.set("practice", about.practice);
    asked.set("chair", about.code);
  }
  return `&${asked}`;
}

function partOf(
  id: MatrixPart["id"],
  title: string,
  columns: MatrixBlock["columns"],
  rates: readonly RateFigure[],
  of: MatrixOf,
): MatrixPart | null {
  const kind = id === "clinicians" ? "clinician" : "chair";
  const criteria = of.criteria.filter((one) => one.byClinician === (kind === "clinician"));
  if (criteria.length === 0) return null;
  const rows = criteria.map((criterion) => {
    const measure = criterionMeasure(criterion);
    const some = rates.filter((figure) => figure.measure === measure && figure.about.kind === kind);
    return {
      ...rowOf(criterion, figureOfWhole(rates, measure), of),
      cells: columns.map((column) =>
        matrixCell(
          some.find(({ about }) => subjectId(about) === column.id),
          of.flags,
        ),
      ),
    };
  });
  const blocks = columnBlocks(columns.length).map(({ from, until }) => {
    const [first, last] = [columns[from]?.name, columns[until - 1]?.name];
    const which = !first ? "" : first === last ? `, ${first}` : `, ${first} to ${last}`;
    return {
      id: `${id} ${from}`,
      label: `Criteria by ${kind}${which}`,
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
  const began = of.began?.get(criterion.id) ?? [];
  const changed = (whole?.changedOn ?? []).filter((one) => !began.includes(one));
  return {
    measure,
    title: criterion.title,
    href: measureAddress(measure, { ...of.filters, span: "quarter" }),
    target: differ ? "targets differ" : `target ${setShare(criterion.target)}`,
    changed: [
      ...(began.length > 0 ? [`in force since ${began.map(day).join(", ")}`] : []),
      ...(changed.length > 0 ? [`changed on ${changed.map(day).join(", ")}`] : []),
    ].join(", "),
    whole: matrixCell(whole, of.flags),
  };
}

function figureOfWhole(rates: readonly RateFigure[], measure: string): RateFigure | undefined {
  return rates.find((figure) => figure.measure === measure && figure.about.kind === "group");
}
