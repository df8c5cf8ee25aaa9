import type { Missing } from "@/lib/audit/cycle/missing-to-sign";
import type { ToLookAt } from "@/lib/audit/cycle/to-look-at";
import { day } from "../day";
import { titleOf } from "../measure-words";
import { subjectName } from "../subject-name";
import { type AuditStep, pathOf } from "./step-list";

/** Something that an audit lacks before it can be signed, and where it is done. */
export type MissingLine = { readonly words: string; readonly step: AuditStep };

export function missingLines(
  missing: readonly Missing[],
  looks: readonly ToLookAt[],
): MissingLine[] {
  return missing.map((one) => ({ words: wordsOf(one, looks), step: pathOf(one) }));
}

function wordsOf({ what, about }: Missing, looks: readonly ToLookAt[]): string {
  switch (what) {
    case "text":
      return about === "purpose"
        ? "Why this audit is made is not written yet."
        : "The summary is not written yet.";
    case "settle":
      return "The data check found what has to be settled first.";
    case "note":
      return "The data check found what has to be noted.";
    case "window":
      return "The clinicians have not been asked to confirm their records.";
    case "window-open":
      return `The window for confirming is open until ${day(about)}; it can be closed before.`;
    case "dispute":
      return "A dispute has no answer yet.";
    case "action":
      return "No action is agreed, and it is not said why none is needed.";
    case "look": {
      const of = looks.find(({ id }) => id === about);
      return of
        ? `The closer look has not ended: ${titleOf(of.figure)}, ${subjectName(of.figure.about)}.`
        : "A closer look has not ended.";
    }
  }
}
