import { day } from "../../day";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { count } from "../../quantity";
import { confirmingSummary, windowWords } from "../confirming-view";
import { dataView } from "../data-view";
import type { AuditDocumentOf } from "./audit-document-of";
import { restsOn } from "./summary-blocks";
import { textBlocks } from "./text-blocks";

/** How the records were selected, how complete they are, and what was made of what is missing. */
export function recordsPart({ content, today }: AuditDocumentOf): DocumentPart {
  const { computed, work, signed } = content;
  const view = dataView(computed, signed?.at.slice(0, 10) ?? today);
  const findings = view.findings.flatMap(({ words, key }): DocumentBlock[] => [
    { kind: "words", words },
    ...textBlocks(work, key).map((block) => ({ ...block, soft: true })),
  ]);
  const held = signed?.heldWithoutDay ?? 0;
  return {
    id: "records",
    title: "Records",
    note: "How they were selected, and how complete they are.",
    blocks: [
      { kind: "words", words: restsOn(content) },
      {
        kind: "words",
        words: `The last recorded day is ${computed.lastDay ? day(computed.lastDay) : "none"}.${held > 0 ? ` Held rows that tell no day, and may belong to the period: ${count(held)}.` : ""}`,
      },
      { kind: "heading", words: "What the data check found" },
      ...(findings.length > 0
        ? findings
        : [{ kind: "words", words: "Nothing that has to be settled or noted." } as const]),
      ...textBlocks(work, "data"),
      { kind: "heading", words: "How complete each measure is" },
      {
        kind: "table",
        label: "Completeness",
        columns: [
          { title: "Measure", share: 1.6 },
          { title: "Recorded", numeric: true },
          { title: "Complete", numeric: true, share: 0.6 },
          { title: "Floor", share: 1.2 },
        ],
        rows: view.completeness.map((one) => ({
          id: one.measure,
          cells: [one.title, one.recorded, one.share, one.note],
        })),
      },
      { kind: "heading", words: "Confirmed by those whose records they are" },
      {
        kind: "words",
        words: `${windowWords(content, false)} ${confirmingSummary(content)}`,
      },
    ],
  };
}
