import type { AuditComputed } from "@/lib/audit/cycle/audit-content";
import { criterionPopulation } from "../../criterion-population";
import { day } from "../../day";
import type { DocumentBlock, DocumentPart } from "../../document/document";
import { definitionOf, populationOf, sourceOf, titleOf } from "../../measure-words";
import { setShare } from "../../quantity";

/** What practice was held against, and where each standard comes from. */
export function standardsPart({ criteria, versions }: AuditComputed): DocumentPart {
  const written = versions.map(
    (one) =>
      `${titleIn(criteria, one.criterion)}, ${one.practice}: ${one.inForce ? "its own version" : "not in force"} from ${day(one.from)}, written on ${day(one.writtenOn)}.`,
  );
  return {
    id: "standards",
    title: "Standards",
    note: "What practice was held against, and where each comes from.",
    blocks: [
      {
        kind: "table",
        label: "Criteria, targets and sources",
        columns: [
          { title: "Criterion", share: 1.3 },
          { title: "Demand", share: 2.4 },
          { title: "Target", share: 1.4 },
          { title: "Source", share: 1.3 },
        ],
        rows: criteria.map((one) => ({
          id: one.id,
          cells: [
            one.title,
            one.statement,
            `${setShare(one.target)}. ${one.targetSource}`,
            one.source,
          ],
        })),
      },
      ...(written.length > 0
        ? ([
            { kind: "heading", words: "Versions that a practice wrote" },
            { kind: "list", items: written },
          ] satisfies DocumentBlock[])
        : [
            {
              kind: "words",
              words:
                "Every criterion is the one that comes with the tool; no practice wrote its own version for this period.",
            } as const,
          ]),
    ],
  };
}

/** What every figure is, exactly. */
export function definitionsPart({ criteria, across, measures }: AuditComputed): DocumentPart {
  const ids = [...new Set([...across, ...measures].map(({ measure }) => measure))];
  return {
    id: "definitions",
    title: "Definitions and methods",
    blocks: [
      {
        kind: "facts",
        facts: ids.map((measure) => ({
          name: titleOf({ measure }),
          words: `${definitionOf({ measure })} Counted: ${populationOf({ measure })} Source: ${sourceOf({ measure })}`,
        })),
      },
      {
        kind: "facts",
        facts: criteria.map((criterion) => {
          const measured = { measure: `criterion/${criterion.id}`, criterion };
          return {
            name: criterion.title,
            words: `${definitionOf(measured)} Counted: ${criterionPopulation(criterion)}`,
          };
        }),
      },
      {
        kind: "list",
        items: [
          "A rate is what was met, of what is eligible and not excepted. What is not recorded is counted and stands apart from what was not met; missing is never taken as zero.",
          "Intervals are 95 %: of rates by Wilson, of rare events by Clopper and Pearson, of medians by order statistics; those that allow for canals of one patient resembling each other are wider and are the ones to read.",
          "Differences carry Newcombe's interval (1998, Statistics in Medicine 17:873), of medians the same of their ends (Zou and Donner 2008, Statistics in Medicine 27:1693).",
          "Clinicians' rates are flagged after allowing for how many are compared (Benjamini and Hochberg 1995); both directions are shown.",
        ],
      },
    ],
  };
}

function titleIn(criteria: AuditComputed["criteria"], id: string): string {
  return criteria.find((one) => one.id === id)?.title ?? id;
}
