import type * as r4 from "fhir/r4";
import type { Measure } from "@/lib/measures/measure";
import { measureOf } from "@/lib/measures/measures";
import { coded } from "./coded";
import { identified } from "./measure-identity";
import { populationInWords } from "./population-in-words";

/** A measure that is no criterion: a median as a continuous variable, a rate as a proportion. */
export function otherAsMeasure(id: string): r4.Measure {
  const measure = measureOf(id);
  const median = measure.kind === "median";
  return identified(measure.id, {
    title: measure.title,
    subjectCodeableConcept: { text: measure.per },
    description: measure.definition,
    relatedArtifact: [{ type: "justification", citation: measure.source }],
    scoring: coded("measure-scoring", median ? "continuous-variable" : "proportion"),
    type: [coded("measure-type", median ? "process" : "outcome")],
    rationale: measure.why,
    ...(median
      ? { rateAggregation: `The median of the observations, in ${measure.unit}.` }
      : {
          improvementNotation: coded(
            "measure-improvement-notation",
            measure.lowerIsBetter ? "decrease" : "increase",
          ),
        }),
    group: [{ population: median ? ofMedian(measure) : ofRate(measure) }],
  });
}

const known = "but for those of which it is not recorded; what is left out is of it, and is taken";
const leftOut = "Units left out, each counted under the first reason that applies.";

function ofMedian({ population, definition }: Measure): r4.MeasureGroupPopulation[] {
  return [
    populationInWords("initial-population", population),
    populationInWords(
      "measure-population",
      `The initial population, ${known} out before anything is observed.`,
    ),
    populationInWords("measure-population-exclusion", leftOut),
    populationInWords("measure-observation", `${definition} The score is the median.`),
  ];
}

function ofRate({ population, definition }: Measure): r4.MeasureGroupPopulation[] {
  return [
    populationInWords("initial-population", population),
    populationInWords("denominator", `The initial population, ${known} out of it for the score.`),
    populationInWords("denominator-exclusion", leftOut),
    populationInWords("denominator-exception", "None is foreseen."),
    populationInWords("numerator", definition),
  ];
}
