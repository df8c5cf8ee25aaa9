import type { AuditWork } from "@/lib/records/audit-work";
import type { DocumentBlock } from "../../document/document";

/** What was written under a key, a block a paragraph; none where nothing was. */
export function textBlocks({ texts }: Pick<AuditWork, "texts">, key: string): DocumentBlock[] {
  const text = texts.find((one) => one.key === key)?.text ?? "";
  return text
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.trim())
    .filter(Boolean)
    .map((words) => ({ kind: "words", words }));
}

/** The same, or the sentence that says that nothing was written. */
export function textOr(
  work: Pick<AuditWork, "texts">,
  key: string,
  otherwise: string,
): DocumentBlock[] {
  const blocks = textBlocks(work, key);
  return blocks.length > 0 ? blocks : [{ kind: "words", words: otherwise, soft: true }];
}
