import type { AuditComputed, AuditContent } from "@/lib/audit/cycle/audit-content";
import { toLookAt } from "@/lib/audit/cycle/to-look-at";
import { wholeRates } from "@/lib/audit/cycle/whole-rates";
import type { RateFigure } from "@/lib/audit/figure";
import { stateOf } from "@/lib/records/audit-work";
import { day } from "../../day";
import type { DocumentBlock } from "../../document/document";
import { peopleCount, peopleWords } from "../../people-count";
import { count } from "../../quantity";
import { confirmingSummary } from "../confirming-view";
import type { AuditDocumentOf } from "./audit-document-of";
import { textBlocks, textOr } from "./text-blocks";

/** The first page: what was found, what is done about it, and on how much it rests. */
export function summaryBlocks({ content }: AuditDocumentOf): DocumentBlock[] {
  const { computed, work } = content;
  const looks = toLookAt(computed);
  const open = work.earlier.filter((one) => stateOf(one) === "open").length;
  const recommendation = textBlocks(work, "recommendation");
  return [
    { kind: "heading", words: "What was found" },
    ...textOr(work, "summary", "No summary is written yet."),
    {
      kind: "list",
      items: [
        restsOn(content),
        criteriaWords(computed),
        looks.length === 0
          ? "Nothing asked for a closer look beyond what chance gives."
          : `${count(looks.length)} ${looks.length === 1 ? "figure" : "figures"} asked for a closer look: ${count(looks.filter(({ flagged }) => flagged === null).length)} of practices, ${count(looks.filter(({ flagged }) => flagged !== null).length)} of clinicians. What was found stands in its own part.`,
        confirmingSummary(content),
      ],
    },
    ...(recommendation.length > 0
      ? [{ kind: "heading", words: "Recommendation" } as const, ...recommendation]
      : []),
    { kind: "heading", words: "What is done about it" },
    work.actions.length === 0
      ? { kind: "words", words: "No action is agreed." }
      : {
          kind: "table",
          label: "Actions",
          columns: [{ title: "Action", share: 3 }, { title: "Who" }, { title: "By", share: 0.8 }],
          rows: work.actions.map((one) => ({
            id: String(one.id),
            cells: [one.what, one.owner, day(one.due)],
          })),
        },
    ...(work.earlier.length > 0
      ? [
          {
            kind: "words",
            words: `Of the ${count(work.earlier.length)} actions of the audits before, ${count(open)} ${open === 1 ? "is" : "are"} still open.`,
          } as const,
        ]
      : []),
  ];
}

/** On how many visits, patients and clinicians it all rests; few people are masked, and visits with their patients. */
export function restsOn({ computed, masked }: Pick<AuditContent, "computed" | "masked">): string {
  const counts = computed.people.map(({ practice, ...counted }) => {
    const [patients = null, clinicians = null] = (["patients", "clinicians"] as const).map((who) =>
      masked.people.includes(`${practice}/${who}`) ? null : peopleCount(counted[who]),
    );
    const visits = patients === null ? "masked" : count(counted.visits);
    return `${practice} ${visits} visits, ${peopleWords(patients)} patients, ${peopleWords(clinicians)} clinicians`;
  });
  const all = computed.people.some(({ practice }) =>
    masked.people.includes(`${practice}/patients`),
  );
  const canals = all ? "" : `; ${count(computed.records.counts.canals ?? 0)} canals`;
  return `It rests on every record of the period, nothing sampled: ${counts.join("; ")}${canals}.`;
}

function criteriaWords(computed: AuditComputed): string {
  const { criteria } = computed;
  const wholes = wholeRates(computed);
  const how = (state: RateFigure["inTheseRecords"]) =>
    wholes.filter(({ inTheseRecords }) => inTheseRecords === state).length;
  const missed = wholes.filter(({ beyondChance }) => beyondChance === "missed").length;
  const rest = criteria.length - how("reached") - how("not reached") - how("not assessable");
  return `Of ${count(criteria.length)} criteria ${count(how("reached"))} ${how("reached") === 1 ? "was" : "were"} reached in these records and ${count(how("not reached"))} not, ${count(missed)} of them missed beyond chance; ${count(how("not assessable"))} cannot be assessed${rest > 0 ? `; ${count(rest)} had nothing to count, or different targets` : ""}.`;
}
