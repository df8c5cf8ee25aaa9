import { moment } from "../../day";
import type { DocumentPart } from "../../document/document";
import { count } from "../../quantity";
import type { AuditDocumentOf } from "./audit-document-of";

/** On which records and by which software the figures stand, and how it is proven. */
export function provenancePart({ content, fingerprints }: AuditDocumentOf): DocumentPart {
  const { computed, signed, form } = content;
  const counts = Object.entries(computed.records.counts).map(
    ([table, rows]) => `${table} ${count(rows)}`,
  );
  return {
    id: "provenance",
    title: "Where the figures come from",
    blocks: [
      {
        kind: "facts",
        facts: [
          { name: "Rows counted", words: counts.join(", ") || "none" },
          { name: "Held rows of the period", words: count(computed.held) },
          ...(signed
            ? [
                {
                  name: "Signed by",
                  words: `${signed.by}, ${moment(new Date(signed.at), "UTC")} UTC`,
                },
                { name: "Version", words: String(signed.version) },
                { name: "Software", words: signed.software },
              ]
            : []),
          ...(fingerprints
            ? [
                { name: "SHA-256 of what was signed", words: fingerprints.signed },
                { name: "SHA-256 of the figures within", words: fingerprints.computed },
              ]
            : []),
        ],
      },
      {
        kind: "words",
        words: signed
          ? `What was signed is kept as canonical JSON (RFC 8785, numbers to 12 significant digits). The same records give the same figures and so the same fingerprint; canal-audit verify ${form.id} computes them again and says what, if anything, later records would change.`
          : "This is a draft: nothing is frozen, and it has no fingerprint.",
      },
    ],
  };
}
