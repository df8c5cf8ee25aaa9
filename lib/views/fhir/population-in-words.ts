import type * as r4 from "fhir/r4";
import { coded, type PopulationCode } from "./coded";

/**
 * A population of a measure. R4 demands an expression; ours are worked out from our own records, which no FHIR server
 * holds, so that words stand there and say so by their language.
 */
export function populationInWords(code: PopulationCode, words: string): r4.MeasureGroupPopulation {
  return {
    code: coded("measure-population", code),
    description: words,
    criteria: { language: "text/plain", expression: words },
  };
}
