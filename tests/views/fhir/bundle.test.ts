import { Fhir } from "fhir";
import type * as r4 from "fhir/r4";
import { describe, expect, test } from "vitest";
import { canonicalJson } from "@/lib/views/canonical-json";
import { adherence, figures, fingerprint, further, madeBundle } from "./made-bundle";
import { resourcesOf } from "./r4-validators";

/*
 * Expected values: HL7 FHIR R4 (4.0.1): bundle.html (bdl-7: fullUrl unique), measure.html (mea-0, mea-1), measurereport.html
 * (mrp-1, mrp-2), structuredefinition.html (sdf-5, sdf-6, sdf-14, sdf-16), terminologies.html; codes and displays are those of
 * HL7's R4 value sets as npm fhir 4.12.0 carries them. The rest is worked by hand from the made report.
 */
const bundle = madeBundle();
const entries = bundle.entry ?? [];

test("it is a collection as of the data cut-off under the report's fingerprint", () => {
  expect(bundle).toMatchObject({
    resourceType: "Bundle",
    type: "collection",
    timestamp: "2026-10-02T08:30:00.000Z",
    identifier: { value: fingerprint },
  });
  const none = madeBundle({ published: null });
  expect(none.timestamp).toBeUndefined();
  expect(none._timestamp?.extension?.[0]?.valueCode).toBe("unknown");
});

test("the same report has the same bundle, byte for byte; another has other addresses where it differs", () => {
  expect(canonicalJson(madeBundle())).toBe(canonicalJson(bundle));
  const urls = (one: r4.Bundle) => (one.entry ?? []).map(({ fullUrl }) => fullUrl);
  expect(new Set(urls(bundle)).size).toBe(entries.length);
  for (const url of urls(bundle))
    expect(url).toMatch(
      /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    );
  const other = madeBundle({
    people: [{ practice: "OAK", visits: 300, patients: 211, clinicians: 6 }],
  });
  const changed = urls(other).filter((url) => !urls(bundle).includes(url));
  expect(changed).toHaveLength(1);
});

test("there is a measure for each criterion and further measure, and a report for each and practice", () => {
  const names = resourcesOf(bundle, "Measure").map(({ url }) => url?.split("/").at(-1));
  expect(names).toEqual([
    ...["criterion-isolation", "criterion-line-check"],
    ...["volume", "irrigation-time", "separation-per-canal"],
    ...["overall-opportunities", "overall-visits"],
    ...["patients-behind-the-records", "clinicians-behind-the-records"],
  ]);
  // Two criteria and two counts of people at both practices, three further figures, both scores of one practice.
  expect(resourcesOf(bundle, "MeasureReport")).toHaveLength(2 * 4 + 3 + 2);
  expect(resourcesOf(bundle, "Organization").map(({ name }) => name)).toEqual([
    "practice ELM",
    "practice OAK",
  ]);
});

test("a criterion that a practice words otherwise is another version of the measure", () => {
  const [, , isolation, ...others] = figures;
  if (!isolation?.criterion) throw new Error("not the criterion");
  const own = {
    ...isolation,
    about: { kind: "practice", code: "ELM" } as const,
    criterion: { ...isolation.criterion, statement: "Isolated throughout." },
  };
  const found = resourcesOf(madeBundle({ figures: [isolation, own, ...others] }), "Measure");
  const versions = found.filter(({ url }) => url?.endsWith("criterion-isolation"));
  expect(versions).toHaveLength(2);
  expect(new Set(versions.map(({ version }) => version)).size).toBe(2);
});

test("what is reported can be looked up: measures, practices and extensions are in the bundle", () => {
  const measures = resourcesOf(bundle, "Measure").map(({ url, version }) => `${url}|${version}`);
  const urls = entries.map(({ fullUrl }) => fullUrl);
  for (const { measure, reporter } of resourcesOf(bundle, "MeasureReport")) {
    expect(measures).toContain(measure);
    expect(urls).toContain(reporter?.reference);
  }
});

test("every name is one that a program may bear, every stratum has a value (mea-0, mrp-2)", () => {
  for (const { name, status, experimental } of resourcesOf(bundle, "Measure")) {
    expect(name).toMatch(/^[A-Z][A-Za-z0-9_]{0,254}$/);
    expect([status, experimental]).toEqual(["active", false]);
  }
  const strata = resourcesOf(bundle, "MeasureReport").flatMap(({ group = [] }) =>
    group.flatMap(({ stratifier = [] }) => stratifier.flatMap(({ stratum = [] }) => stratum)),
  );
  expect(strata.length).toBe(2);
  for (const { value, component } of strata)
    expect([value === undefined, component]).toEqual([false, undefined]);
});

test("every code is one of HL7's, with its display", () => {
  const { parsedValueSets } = new Fhir().parser;
  const known = new Map(
    Object.values(parsedValueSets).flatMap(({ systems }) =>
      systems.flatMap(({ uri, codes }) =>
        codes.map(({ code, display }) => [`${uri} ${code}`, display] as const),
      ),
    ),
  );
  const codings = [
    ...JSON.stringify(bundle).matchAll(
      /\{"system":"(http:\/\/terminology[^"]+)","code":"([^"]+)","display":"([^"]+)"\}/g,
    ),
  ];
  expect(codings.length).toBeGreaterThan(50);
  for (const [, system, code, display] of codings)
    expect(known.get(`${system} ${code}`), `${system} ${code}`).toBe(display);
});

describe("clinicians", () => {
  const figure = adherence(
    { kind: "clinician", code: "C77", practice: "OAK", key: "OAK/C77" },
    "isolation",
    { population: 9, numerator: 8, denominator: 9 },
  );

  test("are in no bundle but where they are asked for", () => {
    const text = canonicalJson(madeBundle({ figures: [...figures, figure] }));
    expect(text).not.toMatch(/C77|Practitioner/);
  });

  test("are told apart by the label alone: no name, no code, no practice", () => {
    const labelled = madeBundle({}, { further, clinicians: [{ label: "K", figures: [figure] }] });
    expect(canonicalJson(labelled)).not.toContain("C77");
    const [practitioner, ...more] = resourcesOf(labelled, "Practitioner");
    expect(more).toEqual([]);
    expect(practitioner?.identifier?.map(({ value }) => value)).toEqual(["K"]);
    expect(Object.keys(practitioner ?? {}).sort()).toEqual(["identifier", "resourceType"]);
    const own = resourcesOf(labelled, "MeasureReport").filter(({ subject }) => subject);
    expect(own).toHaveLength(1);
    expect(own[0]?.reporter).toBeUndefined();
    const entry = labelled.entry?.find(({ resource }) => resource === practitioner);
    expect(own[0]?.subject?.reference).toBe(entry?.fullUrl);
  });
});
