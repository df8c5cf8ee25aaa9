import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import { placeId } from "@/lib/audit/cycle/figure-id";
import { maskedWhy } from "@/lib/audit/disclosure/masked-figure";
import { cautions } from "../../cautions";
import { day, moment } from "../../day";
import type {
  DocumentBlock,
  DocumentFact,
  DocumentPart,
  ReportDocument,
} from "../../document/document";
import { auditName } from "../audit-name";
import { actionsPart, earlierPart } from "./actions-parts";
import type { AuditDocumentOf } from "./audit-document-of";
import { clinicianPart } from "./clinician-part";
import { lookPart } from "./look-part";
import { provenancePart } from "./provenance-part";
import { recordsPart } from "./records-part";
import { resultsPart } from "./results-part";
import { definitionsPart, standardsPart } from "./standards-parts";
import { summaryBlocks } from "./summary-blocks";
import { textOr } from "./text-blocks";

/** The audit as a report: a summary for whoever reads no further, then what a report of an audit is judged on. */
export function auditDocument(of: AuditDocumentOf): ReportDocument {
  const { content } = of;
  const name = auditName(content.form);
  // Where all of it rests on so few patients nothing can be told of it that would not tell of them.
  const whole = !content.masked.places.includes(wholeId(content));
  return {
    title: name,
    over: "Clinical audit of root-canal treatment from its records",
    language: "en-GB",
    facts: factsOf(of),
    summary: whole ? summaryBlocks(of) : [nothingTold],
    parts: [
      purposePart(content),
      standardsPart(content.computed),
      ...(whole
        ? [
            recordsPart(of),
            resultsPart(content),
            clinicianPart(of),
            lookPart(of),
            ...earlierPart(of),
            actionsPart(of),
          ]
        : []),
      definitionsPart(content.computed),
      ...(whole ? [provenancePart(of)] : []),
      cautionsPart(),
    ],
    foot: `${name}. ${content.signed ? `Version ${content.signed.version}, signed ${day(content.signed.at)}` : "Draft, not signed"}.`,
  };
}

const nothingTold: DocumentBlock = {
  kind: "words",
  words: `What this audit found is not reported: ${maskedWhy}. Its pages show it to those who run it.`,
};

function wholeId({ form }: AuditContent): string {
  return placeId(form.practice ? { kind: "practice", code: form.practice } : { kind: "group" });
}

function factsOf({ content, fingerprints }: AuditDocumentOf): DocumentFact[] {
  const { signed, computed } = content;
  const cutOff = signed?.cutOff;
  return [
    {
      name: "State",
      words: signed
        ? `version ${signed.version}, signed by ${signed.by} on ${moment(new Date(signed.at), "UTC")} UTC`
        : "draft, not signed: figures are of today's records and may still change",
    },
    ...(signed?.reason ? [{ name: "Restated because", words: signed.reason }] : []),
    {
      name: "Period",
      words: `${day(computed.period.from)} up to, and without, ${day(computed.period.until)}`,
    },
    {
      name: "Practices",
      words: computed.practices.map(({ code, name }) => `${name} (${code})`).join(", "),
    },
    ...(signed
      ? [
          {
            name: "Records as of",
            words: cutOff ? `${moment(new Date(cutOff), "UTC")} UTC` : "no import",
          },
        ]
      : []),
    ...(fingerprints ? [{ name: "Fingerprint", words: fingerprints.signed }] : []),
  ];
}

function purposePart({ work }: AuditContent): DocumentPart {
  return {
    id: "purpose",
    title: "Why this audit",
    blocks: textOr(work, "purpose", "No purpose is written yet."),
  };
}

function cautionsPart(): DocumentPart {
  const blocks: DocumentBlock[] = [{ kind: "list", items: cautions }];
  return { id: "cautions", title: "Before any figure is used", blocks };
}
