import type * as r4 from "fhir/r4";

/** What an extension of our own is to hold. */
export type ExtensionDefined = {
  readonly url: string;
  /** As a computer may name it. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  /** Paths of the elements that it stands on. */
  readonly on: readonly string[];
  /** Its value's type, or its parts. */
  readonly holds: string | readonly ExtensionPart[];
};

export type ExtensionPart = {
  readonly name: string;
  readonly type: "decimal" | "integer" | "code" | "string";
  readonly short: string;
  readonly required?: true;
};

/** The definition of an extension as a differential over R4's Extension. */
export function structureDefinition(of: ExtensionDefined): r4.StructureDefinition {
  return {
    resourceType: "StructureDefinition",
    url: of.url,
    version: "1",
    name: of.name,
    title: of.title,
    status: "active",
    experimental: false,
    description: of.description,
    kind: "complex-type",
    abstract: false,
    context: of.on.map((expression) => ({ type: "element" as const, expression })),
    type: "Extension",
    baseDefinition: "http://hl7.org/fhir/StructureDefinition/Extension",
    derivation: "constraint",
    differential: {
      element: [
        {
          id: "Extension",
          path: "Extension",
          short: of.title,
          definition: of.description,
          min: 0,
          max: "*",
        },
        ...(typeof of.holds === "string"
          ? simple(of.url, of.holds)
          : [...of.holds.flatMap(part), ...complex(of.url)]),
      ],
    },
  };
}

function simple(url: string, type: string): r4.ElementDefinition[] {
  return [
    { id: "Extension.extension", path: "Extension.extension", max: "0" },
    { id: "Extension.url", path: "Extension.url", fixedUri: url },
    { id: "Extension.value[x]", path: "Extension.value[x]", min: 1, type: [{ code: type }] },
  ];
}

function complex(url: string): r4.ElementDefinition[] {
  return [
    { id: "Extension.url", path: "Extension.url", fixedUri: url },
    { id: "Extension.value[x]", path: "Extension.value[x]", max: "0" },
  ];
}

function part({ name, type, short, required }: ExtensionPart): r4.ElementDefinition[] {
  const id = `Extension.extension:${name}`;
  const path = "Extension.extension";
  return [
    { id, path, sliceName: name, short, min: required ? 1 : 0, max: "1" },
    { id: `${id}.extension`, path: `${path}.extension`, max: "0" },
    { id: `${id}.url`, path: `${path}.url`, fixedUri: name },
    { id: `${id}.value[x]`, path: `${path}.value[x]`, min: 1, type: [{ code: type }] },
  ];
}
