import JsonSchemaValidator from "@asymmetrik/fhir-json-schema-validator";
import { Fhir } from "fhir";
import type * as r4 from "fhir/r4";

const byDefinitions = new Fhir();
const bySchema = new JsonSchemaValidator();

/** What a validator finds wrong; empty where it finds nothing. */
export type Validator = (resource: unknown) => readonly string[];

/** Over HL7's structure definitions and value sets: elements, cardinalities, required codes; nothing unknown. */
function definitions(resource: unknown): string[] {
  const { valid, messages } = byDefinitions.validate(resource as object, {
    errorOnUnexpected: true,
  });
  const errors = messages.filter(({ severity }) => severity === "error" || severity === "fatal");
  return [
    ...errors.map(({ location, message }) => `${location}: ${message}`),
    ...(valid || errors.length > 0 ? [] : ["not valid"]),
  ];
}

/** Over HL7's JSON schema of R4. */
function schema(resource: unknown): string[] {
  return (bySchema.validate(resource as object, true) ?? []).map((one) => JSON.stringify(one));
}

/** Two validators that have nothing in common but the specification. */
export const validators: Readonly<Record<string, Validator>> = {
  "structure definitions (fhir)": definitions,
  "JSON schema (@asymmetrik/fhir-json-schema-validator)": schema,
};

/** The resources of a bundle of one kind. */
export function resourcesOf<T extends r4.FhirResource["resourceType"]>(
  bundle: r4.Bundle<r4.FhirResource>,
  type: T,
): Extract<r4.FhirResource, { resourceType: T }>[] {
  return (bundle.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === type
      ? [resource as Extract<r4.FhirResource, { resourceType: T }>]
      : [],
  );
}
