import type * as r4 from "fhir/r4";
import { coded, type PopulationCode } from "./coded";

/**
 * A population of a measure, in words. R4 demands an expression beside them, and HL7's JSON schema of R4 takes three
 * languages alone. Ours are worked out from our own records, which no FHIR server holds: the expression is the FHIRPath of
 * something that only this program could supply, so that another stops there instead of counting nobody.
 */
export function populationInWords(code: PopulationCode, words: string): r4.MeasureGroupPopulation {
  return {
    code: coded("measure-population", code),
    description: words,
    criteria: {
      description: words,
      language: "text/fhirpath",
      expression: `%\`canal-audit/${code}\``,
    },
  };
}
