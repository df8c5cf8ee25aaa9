import type * as r4 from "fhir/r4";

/** Why a value is not there, in codes of http://terminology.hl7.org/CodeSystem/data-absent-reason. */
export type AbsentReason = "unknown" | "masked" | "not-applicable";

/** Says that a value is not there, and why: HL7's own extension. */
export function absent(reason: AbsentReason): r4.Extension {
  return {
    url: "http://hl7.org/fhir/StructureDefinition/data-absent-reason",
    valueCode: reason,
  };
}
