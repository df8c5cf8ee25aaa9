import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import type { Figure, RateFigure } from "@/lib/audit/figure";
import { adherenceLine } from "../../adherence-line";
import { compositeView, noVerdict, scoreNames } from "../../composite";
import { criteriaChart } from "../../criteria-chart";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { figureCells, figureHeads } from "../../figure-cells";
import { titleOf } from "../../measure-words";
import { subjectId } from "../../subject-id";
import { subjectName } from "../../subject-name";
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
  const overall = compositeView(
    computed.composites.filter(
      ({ about }) => about.kind !== "clinician" && (several || about.kind !== "group"),
    ),
    computed.criteria,
    ({ about }) => subjectName(about),
  );
  return {
    id: "results",
    title: "Results",
    note: "Of practices and chairs. Two verdicts, never mixed: in these records, and beyond chance.",
    wide: true,
    blocks: [
      ...textBlocks(work, "results"),
      { kind: "intervals", chart: criteriaChart(wholesOf(computed), computed.period) },
      {
        kind: "words",
        words:
          "Where there is an interval that allows for units of one patient resembling each other, it is the one to read.",
      },
      criteriaTable(
        computed.criteria.flatMap(({ id }) =>
          rates.filter(({ criterion }) => criterion?.id === id),
        ),
      ),
      measuresTable(computed.measures.filter(ofPlaces)),
      { kind: "heading", words: "Overall" },
      {
        kind: "words",
        words: `${noVerdict} ${computed.criteria.length} criteria are in this audit; the scores count every criterion in force.`,
      },
      {
        kind: "table",
        label: "Overall scores",
        columns: [
          { title: "Where" },
          { title: scoreNames.opportunities, share: 2 },
          { title: scoreNames.visits, share: 2 },
        ],
        rows: overall.rows.map((row) => ({
          id: row.id,
          cells: [
            row.name,
            ...[row.opportunities, row.visits].map((score) =>
              [
                score.estimate,
                score.interval && `95 % interval ${score.interval}`,
                score.counts,
                score.notMet,
              ]
                .filter(Boolean)
                .join("; "),
            ),
          ],
        })),
      },
    ],
  };
}

/** The group's figures of the criteria, or those of the one practice. */
function wholesOf({ adherence, practices }: AuditContent["computed"]): RateFigure[] {
  const kind = practices.length > 1 ? "group" : "practice";
  return adherence.filter(
    (figure): figure is RateFigure => figure.kind === "rate" && figure.about.kind === kind,
  );
}

function criteriaTable(rates: readonly RateFigure[]): DocumentBlock {
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
      const line = adherenceLine(figure);
      return {
        id: `${figure.measure} ${figure.about.kind} ${subjectId(figure.about)}`,
        cells: [
          titleOf(figure),
          line.about,
          line.words.counts,
          line.words.rate,
          line.words.intervalEnds,
          figureCells(figure).clustered || "none",
          line.words.notRecorded,
          line.words.excepted,
          line.inTheseRecords.words,
          line.beyondChance.words,
        ],
      };
    }),
  };
}

function measuresTable(figures: readonly Figure[]): DocumentBlock {
  return {
    kind: "table",
    label: "Measures",
    columns: [
      { title: "Measure", share: 1.4 },
      { title: "Where", share: 1 },
      ...figureHeads.map((title) => ({ title })),
    ],
    rows: figures.map((figure) => {
      const cells = figureCells(figure);
      return {
        id: `${figure.measure} ${figure.about.kind} ${subjectId(figure.about)}`,
        cells: [
          titleOf(figure),
          subjectName(figure.about),
          cells.estimate,
          cells.interval,
          cells.clustered || "none",
          cells.counts,
          cells.leftOut,
          cells.notRecorded,
        ],
      };
    }),
  };
}
