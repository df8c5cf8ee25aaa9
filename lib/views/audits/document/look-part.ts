import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import { lookSteps } from "@/lib/records/audit-work";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { tierWords } from "../../flag-words";
import { titleOf } from "../../measure-words";
import { clinicianNames } from "../clinician-names";
import { lookWords, stepQuestions, stepTitle } from "../look-view";
import { lookTextKey } from "../text-keys";
import type { AuditDocumentOf } from "./audit-document-of";
import { textBlocks } from "./text-blocks";

/** What was looked at more closely, in which order, and what was found. */
export function lookPart({ content, names }: AuditDocumentOf): DocumentPart {
  const { computed, work } = content;
  const called = clinicianNames(computed);
  const blocks = toLookAt(computed).flatMap((one): DocumentBlock[] => {
    const ended = work.looks.find(({ flag }) => flag === one.id);
    const unnamed = names === "none" && one.flagged;
    return [
      {
        kind: "heading",
        words: unnamed
          ? `${titleOf(one.figure)}: one clinician's rate, ${tierWords(one.flagged?.flag.tier ?? null).toLowerCase()}`
          : titleOf(one.figure),
      },
      ...(unnamed ? [] : [{ kind: "words", words: lookWords(one, called) } as const]),
      ...lookSteps.flatMap((step) =>
        textBlocks(work, lookTextKey(one.id, step)).map(
          (block): DocumentBlock =>
            block.kind === "words"
              ? { ...block, words: `${stepQuestions[step].title}: ${block.words}` }
              : block,
        ),
      ),
      {
        kind: "words",
        words: ended ? `The look ended at: ${stepTitle(ended.step)}.` : "The look has not ended.",
        soft: true,
      },
    ];
  });
  return {
    id: "look",
    title: "Closer look",
    note: "In this order: the records, the cases, the equipment, the way of working, and only then the person.",
    blocks:
      blocks.length > 0 ? blocks : [{ kind: "words", words: "Nothing asked for a closer look." }],
  };
}
