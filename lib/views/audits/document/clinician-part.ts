import { flagsOf } from "@/lib/audit/cycle/to-look-at";
import { beyondChance } from "../../beyond-chance";
import type { IntervalRow } from "../../chart-rows";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { howToLook, promiseWords } from "../../flag-words";
import { count } from "../../quantity";
import { resultsView } from "../results-view";
import type { AuditDocumentOf } from "./audit-document-of";

/** Clinicians side by side, where the report names them by any code; else how many stood out, and no more. */
export function clinicianPart({ content, names }: AuditDocumentOf): DocumentPart {
  const flags = flagsOf(content.computed);
  const flagged = flags.flagged.filter(({ flag }) => flag.tier !== null);
  const promise: DocumentBlock = { kind: "words", words: promiseWords(flags) };
  const of = {
    id: "clinicians",
    title: "Between clinicians",
    note: "A difference is a prompt to look and no verdict on anyone.",
  };
  if (names === "none")
    return {
      ...of,
      blocks: [
        {
          kind: "words",
          words:
            flagged.length === 0
              ? "No clinician's rate stood out by more than chance easily gives."
              : `${count(flagged.length)} of ${count(flags.m)} clinicians' rates stood out by more than chance easily gives. This report names no clinician, not even by code.`,
        },
        promise,
        ...(flagged.length > 0 ? [{ kind: "words", words: howToLook } as const] : []),
      ],
    };
  const chance = beyondChance(flags, { period: content.form.period });
  return {
    ...of,
    wide: true,
    blocks: [
      {
        kind: "words",
        words:
          names === "redrawn"
            ? "Clinicians are called by codes drawn for this report alone."
            : "Clinicians are called by their codes: share this only with those whose task needs it.",
        soft: true,
      },
      chance.flags.length === 0
        ? {
            kind: "words",
            words: "No clinician's rate stood out by more than chance easily gives.",
          }
        : { kind: "list", items: chance.flags.map(({ words }) => words) },
      promise,
      { kind: "words", words: howToLook },
      ...resultsView(content).families.map(
        ({ chart }): DocumentBlock => ({
          kind: "intervals",
          chart: { ...chart, rows: chart.rows.map(withoutAddress) },
        }),
      ),
    ],
  };
}

/** An address would tell whose row it is. */
function withoutAddress({ href, ...row }: IntervalRow): IntervalRow {
  return row;
}
