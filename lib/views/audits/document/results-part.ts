import type { AuditContent, AuditMasked } from "@/lib/audit/cycle/audit-content";
import { figureId, placeId } from "@/lib/audit/cycle/figure-id";
import { wholeRates } from "@/lib/audit/cycle/whole-rates";
import { type MaskedFigure, maskedFigure, maskedWhy } from "@/lib/audit/disclosure/masked-figure";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { adherenceLine } from "../../adherence-line";
import { compositeView, noVerdict } from "../../composite";
import { criteriaChart } from "../../criteria-chart";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { overallTable } from "../../document/overall-table";
import { figureCells, figureHeads } from "../../figure-cells";
import { maskedLine, maskedScores } from "../../masked-line";
import { titleOf } from "../../measure-words";
import { subjectName } from "../../subject-name";
import { confirmingSummary } from "../confirming-view";
import { textBlocks } from "./text-blocks";

/** Figures of the group, practices and chairs; never of a person. */
export function resultsPart(content: AuditContent): DocumentPart {
  const { computed, work } = content;
  const several = computed.practices.length > 1;
  const ofPlaces = (figure: Figure) =>
    figure.about.kind !== "clinician" && (several || figure.about.kind !== "group");
  const rates = computed.adherence.filter(
    (figure): figure is RateFigure => figure.kind === "rate" && ofPlaces(figure),
  );
  const places = computed.composites.filter(
    ({ about }) => about.kind !== "clinician" && (several || about.kind !== "group"),
  );
  const overall = compositeView(places, computed.criteria, ({ about }) => subjectName(about));
  const scores = places.flatMap(({ about }, place) =>
    content.masked.places.includes(placeId(about))
      ? maskedScores({ about })
      : (overall.rows[place] ?? []),
  );
  return {
    id: "results",
    title: "Results",
    note: "Of practices and chairs. Two verdicts, never mixed: in these records, and beyond chance.",
    wide: true,
    blocks: [
      ...textBlocks(work, "results"),
      ...(work.disputes.length > 0
        ? [{ kind: "words", words: confirmingSummary(content) } as const]
        : []),
      { kind: "intervals", chart: criteriaChart(wholesOf(content), computed.period) },
      {
        kind: "words",
        words:
          "Where there is an interval that allows for units of one patient resembling each other, it is the one to read.",
      },
      criteriaTable(
        content.masked,
        computed.criteria.flatMap(({ id }) =>
          rates.filter(({ criterion }) => criterion?.id === id),
        ),
      ),
      measuresTable(content.masked, computed.measures.filter(ofPlaces)),
      { kind: "heading", words: "Overall" },
      {
        kind: "words",
        words: `${noVerdict} ${computed.criteria.length} criteria are in this audit; the scores count every criterion in force.`,
      },
      overallTable(scores),
    ],
  };
}

/** The group's figures of the criteria, or those of the one practice. */
function wholesOf({ computed, masked }: AuditContent): (RateFigure | MaskedFigure)[] {
  return wholeRates(computed).map((figure) =>
    masked.lines.includes(figureId(figure)) ? maskedFigure(figure) : figure,
  );
}

function criteriaTable(masked: AuditMasked, rates: readonly RateFigure[]): DocumentBlock {
  return {
    kind: "table",
    label: "Criteria",
    columns: [
      { title: "Criterion", share: 1.7 },
      { title: "Where", share: 1.2 },
      { title: "Met", share: 1.3 },
      { title: "Rate", numeric: true, share: 0.8 },
      { title: "95 % interval", share: 1.1 },
      { title: "Allowing for patients", share: 1.1 },
      { title: "Not recorded", numeric: true, share: 0.8 },
      { title: "Excepted", share: 1.1 },
      { title: "In these records", share: 1.2 },
      { title: "Beyond chance", share: 1.2 },
    ],
    rows: rates.map((figure) => {
      const isMasked = masked.lines.includes(figureId(figure));
      const line = isMasked ? maskedLine(figure) : adherenceLine(figure);
      return {
        id: figureId(figure),
        cells: [
          titleOf(figure),
          line.about,
          line.words.counts,
          line.words.rate,
          line.words.intervalEnds,
          isMasked ? "masked" : figureCells(figure).clustered || "none",
          line.words.notRecorded,
          line.words.excepted,
          line.inTheseRecords.words,
          line.beyondChance.words,
        ],
      };
    }),
  };
}

function measuresTable(masked: AuditMasked, figures: readonly Figure[]): DocumentBlock {
  return {
    kind: "table",
    label: "Measures",
    columns: [
      { title: "Measure", share: 1.4 },
      { title: "Where", share: 1 },
      ...figureHeads.map((title) => ({ title })),
    ],
    rows: figures.map((figure) => {
      const cells = masked.places.includes(placeId(figure.about)) ? null : figureCells(figure);
      return {
        id: figureId(figure),
        cells: [
          titleOf(figure),
          subjectName(figure.about),
          ...(cells
            ? [
                ...[cells.estimate, cells.interval, cells.clustered || "none"],
                ...[cells.counts, cells.leftOut, cells.notRecorded],
              ]
            : [maskedWhy, ...figureHeads.slice(1).map(() => "masked")]),
        ],
      };
    }),
  };
}
