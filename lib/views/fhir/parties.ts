import type * as r4 from "fhir/r4";
import { subjectName } from "../subject-name";
import { identifierSystem } from "./addresses";

/** A practice by its code. */
export function practiceAsOrganization(code: string): r4.Organization {
  return {
    resourceType: "Organization",
    identifier: [{ system: identifierSystem("practice"), value: code }],
    name: subjectName({ kind: "practice", code }),
  };
}

/** A clinician by a label that was drawn for the occasion, and by nothing else. */
export function labelAsPractitioner(label: string): r4.Practitioner {
  return {
    resourceType: "Practitioner",
    identifier: [{ system: identifierSystem("clinician-label"), value: label }],
  };
}
