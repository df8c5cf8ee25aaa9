import type * as r4 from "fhir/r4";
import type { Criterion } from "@/lib/protocol/criterion";
import { targetWords } from "../adherence-report";
import { definitionOf } from "../measure-words";
import { criterionWords } from "../protocol/criterion-words";
import { coded } from "./coded";
import { identified } from "./measure-identity";
import { populationInWords } from "./population-in-words";

/** A criterion of the protocol as a measure scored by proportion. */
export function criterionAsMeasure(criterion: Criterion): r4.Measure {
  const words = criterionWords(criterion, {});
  const measured = { measure: `criterion/${criterion.id}`, criterion };
  return identified(`criterion-${criterion.id}`, {
    title: criterion.title,
    subjectCodeableConcept: { text: criterion.unit },
    description: definitionOf(measured),
    relatedArtifact: [{ type: "justification", citation: criterion.source }],
    scoring: coded("measure-scoring", "proportion"),
    type: [coded("measure-type", "process")],
    rationale: criterion.rationale,
    clinicalRecommendationStatement: criterion.statement,
    improvementNotation: coded("measure-improvement-notation", "increase"),
    guidance: `Target: ${targetWords(criterion)} ${words.unrecorded}`,
    group: [
      {
        population: [
          populationInWords("initial-population", words.population),
          populationInWords(
            "denominator",
            "The whole initial population; exclusions and exceptions are of it, and are taken out of it for the score.",
          ),
          populationInWords("denominator-exclusion", leftOutWords(words.leftOut)),
          populationInWords("denominator-exception", exceptedWords(words.exceptions)),
          populationInWords("numerator", words.met),
        ],
        ...(criterion.byClinician ? {} : { stratifier: [chairStratifier] }),
      },
    ],
  });
}

/** What staff and equipment do together is told apart by chair. */
const chairStratifier: r4.MeasureGroupStratifier = {
  code: { text: "chair" },
  description: "The chair at which the treatment was given.",
};

function leftOutWords(leftOut: readonly { readonly words: string }[]): string {
  if (leftOut.length === 0) return "None is foreseen.";
  return `Left out, by the first that holds: ${leftOut.map(({ words }) => words).join("; ")}.`;
}

function exceptedWords(exceptions: readonly string[] | null): string {
  if (exceptions === null) return "None is foreseen.";
  const reasons = exceptions.length > 0 ? exceptions.join("; ") : "any coded reason";
  return `Not in the numerator, with a coded reason: ${reasons}.`;
}
