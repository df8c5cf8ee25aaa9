import { cautions } from "../cautions";
import type { DocumentBlock, ReportDocument } from "../document/document";
import type { SharedView } from "./shared-view";

/** A clinician's own summary of an audit, for their portfolio: their figures, what they answered and, where they choose, their reflection. */
export function summaryDocument(view: SharedView, withReflection: boolean): ReportDocument {
  const { figures, tooFew, control, answer, reflection } = view;
  return {
    title: `My summary: ${view.name}`,
    over: "A clinician's own summary, for their own use",
    language: "en-GB",
    facts: [
      { name: "Period", words: view.period },
      { name: "State", words: view.state },
    ],
    summary: [
      {
        kind: "words",
        words:
          "My own figures beside those of the practice without me. They describe records and are a prompt to look, no verdict.",
      },
      { kind: "heading", words: "Within my control" },
      control.length > 0
        ? { kind: "list", items: control }
        : {
            kind: "words",
            words: "No criterion of mine has a unit that was not met or not recorded.",
          },
    ],
    parts: [
      {
        id: "figures",
        title: "My figures",
        blocks: [
          ...figures.flatMap((one): DocumentBlock[] => [
            { kind: "heading", words: one.title },
            {
              kind: "words",
              words: [one.finding, one.comparison, one.interval].filter(Boolean).join(" "),
            },
            ...(one.note ? [{ kind: "words", words: one.note, soft: true } as const] : []),
            { kind: "words", words: one.definition, soft: true },
          ]),
          ...(tooFew.length > 0
            ? ([
                { kind: "heading", words: "Too few units to tell" },
                { kind: "list", items: tooFew },
              ] satisfies DocumentBlock[])
            : []),
        ],
      },
      ...written("answer", "My answer to the audit", answer.text),
      ...(withReflection ? written("reflection", "My reflection", reflection.text) : []),
      {
        id: "cautions",
        title: "Before any figure is used",
        blocks: [{ kind: "list", items: cautions }],
      },
    ],
    foot: `${view.name}. My own summary.`,
  };
}

function written(id: string, title: string, text: string) {
  const paragraphs = text
    .split(/\n\s*\n/)
    .map((one) => one.trim())
    .filter(Boolean);
  return paragraphs.length === 0
    ? []
    : [{ id, title, blocks: paragraphs.map((words): DocumentBlock => ({ kind: "words", words })) }];
}
