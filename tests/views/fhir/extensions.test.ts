import type * as r4 from "fhir/r4";
import { expect, test } from "vitest";
import { further, madeBundle } from "./made-bundle";
import { resourcesOf } from "./r4-validators";

/*
 * Expected values: HL7 FHIR R4 (4.0.1), structuredefinition.html (sdf-5: an extension has a context, sdf-6: a differential or a
 * snapshot, sdf-8a: paths start with the type, sdf-14 and 16: unique ids) and defining-extensions.html: an extension is used
 * where its definition says and holds what it says.
 */
const bundles = [
  madeBundle(),
  madeBundle({}, { further: further.map((one) => ({ ...one, masked: true as const })) }),
];
const definitions = resourcesOf(madeBundle(), "StructureDefinition");

/** Every extension in what is reported, with the path of the element that it stands on. */
function used(value: unknown, path: string): { path: string; extension: r4.Extension }[] {
  if (Array.isArray(value)) return value.flatMap((one) => used(one, path));
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, one]) => {
    if (key !== "extension") return used(one, `${path}.${key.replace(/^_/, "")}`);
    return (one as r4.Extension[]).map((extension) => ({ path, extension }));
  });
}

const ours = bundles.flatMap((bundle) =>
  resourcesOf(bundle, "MeasureReport")
    .flatMap((report) => used(report, "MeasureReport"))
    .filter(({ extension }) => extension.url.startsWith("https://canal-audit.invalid/")),
);

test("each is defined in the bundle, stands where its definition says and holds what it says", () => {
  expect(new Set(ours.map(({ extension }) => extension.url)).size).toBe(definitions.length);
  for (const { path, extension } of ours) {
    const definition = definitions.find(({ url }) => url === extension.url);
    expect(definition?.context?.map(({ expression }) => expression)).toContain(path);
    const elements = definition?.differential?.element ?? [];
    const parts = elements.flatMap(({ sliceName }) => sliceName ?? []);
    if (parts.length === 0) {
      const type = elements.find(({ path: at }) => at === "Extension.value[x]")?.type?.[0]?.code;
      expect(valuesOf(extension)).toEqual([type]);
      continue;
    }
    expect(valuesOf(extension)).toEqual([]);
    for (const part of extension.extension ?? []) {
      if (part.url.startsWith("http://hl7.org/")) continue;
      expect(parts).toContain(part.url);
      const of = elements.find(({ id }) => id === `Extension.extension:${part.url}.value[x]`);
      expect(valuesOf(part)).toEqual([of?.type?.[0]?.code]);
    }
    const demanded = elements.filter(({ sliceName, min }) => sliceName && min === 1);
    for (const { sliceName } of demanded)
      expect(extension.extension?.filter(({ url }) => url === sliceName)).toHaveLength(1);
  }
});

test("each definition has a context and a differential whose elements have ids of their own", () => {
  for (const { context, differential, type, derivation, baseDefinition } of definitions) {
    expect(context?.length).toBeGreaterThan(0);
    expect([type, derivation]).toEqual(["Extension", "constraint"]);
    expect(baseDefinition).toBe("http://hl7.org/fhir/StructureDefinition/Extension");
    const elements = differential?.element ?? [];
    expect(new Set(elements.map(({ id }) => id)).size).toBe(elements.length);
    for (const { path } of elements) expect(path).toMatch(/^Extension(\.|$)/);
  }
});

/** The types of an extension's values, as the names of its elements say. */
function valuesOf(extension: r4.Extension): string[] {
  return Object.keys(extension)
    .map((key) => key.replace(/^_/, ""))
    .filter((key) => key.startsWith("value"))
    .map((key) => `${key.charAt(5).toLowerCase()}${key.slice(6)}`);
}
