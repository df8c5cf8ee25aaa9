import { type CompositeRow, scoreNames } from "../composite";
import type { DocumentTable } from "./document";

/** Both overall scores of each subject as a table of a document. */
export function overallTable(rows: readonly CompositeRow[]): DocumentTable {
  return {
    kind: "table",
    label: "Overall scores",
    columns: [
      { title: "Where" },
      { title: scoreNames.opportunities, share: 2 },
      { title: scoreNames.visits, share: 2 },
    ],
    rows: rows.map((row) => ({
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
  };
}
