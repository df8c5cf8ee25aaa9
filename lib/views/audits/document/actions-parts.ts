import type { AuditAction } from "@/lib/records/audit-work";
import { day } from "../../day";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { periodWords } from "../../period-words";
import { actionLine } from "../action-lines";
import { actedOnLines, beforeAndNow } from "../results-view";
import type { AuditDocumentOf } from "./audit-document-of";
import { textOr } from "./text-blocks";

/** What was agreed: what, why, who, by when, and how we will know. */
export function actionsPart({ content, today }: AuditDocumentOf): DocumentPart {
  const { work } = content;
  return {
    id: "actions",
    title: "Actions",
    blocks:
      work.actions.length === 0
        ? textOr(work, "no-actions", "No action is agreed, and it is not said why none is needed.")
        : [actionsTable("Actions agreed", work.actions, today)],
  };
}

/** What became of the actions of the audits before, and before and after of what they were about; no part for a first audit. */
export function earlierPart({ content, today }: AuditDocumentOf): DocumentPart[] {
  const { computed, work } = content;
  if (!computed.earlier) return [];
  const lines = actedOnLines(content);
  const since: DocumentBlock =
    lines.length === 0
      ? {
          kind: "words",
          words: "No earlier action was about a measure that both audits have.",
        }
      : {
          kind: "table",
          label: "Before and after",
          columns: [
            { title: "Action", share: 1.6 },
            { title: "Measure", share: 1.3 },
            { title: "Where" },
            { title: "Before", share: 1.5 },
            { title: "Now", share: 1.5 },
            { title: "Difference", share: 1.8 },
          ],
          rows: lines.map((one) => ({
            id: one.id,
            cells: [one.action, one.measure, one.about, one.before, one.now, one.change],
          })),
        };
  return [
    {
      id: "earlier",
      title: "Since the audit before",
      note: beforeAndNow(content),
      blocks: [
        work.earlier.length === 0
          ? {
              kind: "words",
              words: `No action was agreed in the audit of ${periodWords(computed.earlier.period)}.`,
            }
          : actionsTable("Actions of the audits before", work.earlier, today),
        since,
      ],
    },
  ];
}

function actionsTable(
  label: string,
  actions: readonly AuditAction[],
  today: string,
): DocumentBlock {
  return {
    kind: "table",
    label,
    columns: [
      { title: "What", share: 2 },
      { title: "Why", share: 1.8 },
      { title: "Who", share: 0.9 },
      { title: "By", share: 0.8 },
      { title: "How we will know", share: 1.6 },
      { title: "How it stands", share: 1.6 },
    ],
    rows: actions.map((one) => {
      const line = actionLine(one, today);
      return {
        id: String(one.id),
        cells: [
          one.what,
          one.why,
          one.owner,
          day(one.due),
          one.know,
          [line.stateWords, ...line.news].join(". "),
        ],
      };
    }),
  };
}
