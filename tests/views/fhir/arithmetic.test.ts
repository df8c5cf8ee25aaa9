import type * as r4 from "fhir/r4";
import { describe, expect, test } from "vitest";
import { further, madeBundle } from "./made-bundle";
import { resourcesOf } from "./r4-validators";

/*
 * Expected values: the arithmetic of HL7 FHIR R4 (4.0.1), codesystem-measure-population.html (exclusions and exceptions are
 * removed from the denominator, exclusions from the measure population); the counts are worked by hand from those of the
 * made report; the ends of the interval of 81 of 263 are of Newcombe 1998, Stat Med 17:857, table I.
 */
const absentReason = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";
const bundle = madeBundle();
const reports = resourcesOf(bundle, "MeasureReport");
const organizations = new Map(
  (bundle.entry ?? []).flatMap(({ fullUrl = "", resource }) =>
    resource?.resourceType === "Organization"
      ? [[resource.identifier?.[0]?.value ?? "", fullUrl] as const]
      : [],
  ),
);

type Counted = Pick<r4.MeasureReportGroup, "population" | "extension" | "measureScore">;

function reportOf(measure: string, practice: string): r4.MeasureReport {
  const found = reports.filter(
    (one) =>
      one.measure.includes(`/Measure/${measure}|`) &&
      one.reporter?.reference === organizations.get(practice),
  );
  expect(found).toHaveLength(1);
  return found[0] as r4.MeasureReport;
}

function groupOf(measure: string, practice: string): r4.MeasureReportGroup {
  const [group, ...more] = reportOf(measure, practice).group ?? [];
  expect(more).toEqual([]);
  if (!group) throw new Error("no group");
  return group;
}

function counts({ population = [] }: Counted) {
  return Object.fromEntries(
    population.map(({ code, count }) => [code?.coding?.[0]?.code ?? "", count]),
  );
}

function extensionOf(of: { extension?: r4.Extension[] | undefined }, id: string) {
  return (of.extension ?? []).filter(({ url }) => url.endsWith(`/StructureDefinition/${id}`));
}

test("a criterion's populations are the report's counts, in FHIR's way of counting", () => {
  const group = groupOf("criterion-isolation", "OAK");
  expect(counts(group)).toEqual({
    "initial-population": 300,
    denominator: 300,
    "denominator-exclusion": 30,
    "denominator-exception": 7,
    numerator: 81,
  });
  expect(group.measureScore).toMatchObject({
    system: "http://unitsofmeasure.org",
    code: "1",
  });
  expect(group.measureScore?.value).toBeCloseTo(81 / (300 - 30 - 7), 12);
  expect(extensionOf(group, "counted-not-recorded")[0]?.valueInteger).toBe(12);
});

test("its interval is the published one, beside why there is none by patient", () => {
  const [plain, clustered, ...more] = extensionOf(
    groupOf("criterion-isolation", "OAK").measureScore ?? {},
    "score-interval",
  );
  expect(more).toEqual([]);
  const partsOf = (one: r4.Extension | undefined) =>
    new Map((one?.extension ?? []).map((part) => [part.url, part]));
  const parts = partsOf(plain);
  expect(parts.get("reading")?.valueCode).toBe("plain");
  expect(parts.get("lower")?.valueDecimal?.toFixed(4)).toBe("0.2553");
  expect(parts.get("upper")?.valueDecimal?.toFixed(4)).toBe("0.3662");
  expect(parts.get("level")?.valueDecimal).toBe(0.95);
  expect(parts.get("method")?.valueCode).toBe("wilson");
  expect(clustered?.extension).toEqual([
    { url: "reading", valueCode: "clustered" },
    { url: absentReason, valueCode: "unknown" },
  ]);
  // Of ten patients with two visits each there is one.
  const [, byPatient] = extensionOf(
    groupOf("criterion-line-check", "OAK").measureScore ?? {},
    "score-interval",
  );
  const found = partsOf(byPatient);
  expect(found.get("reading")?.valueCode).toBe("clustered");
  expect(found.get("lower")?.valueDecimal).toBeLessThan(0.9);
  expect(found.get("upper")?.valueDecimal).toBeGreaterThan(0.9);
});

test("what is left out and excepted is told by reason, and adds up", () => {
  const by = (groupOf("criterion-isolation", "OAK").population ?? []).map((one) =>
    extensionOf(one, "population-by-reason").map(({ extension = [] }) =>
      extension.map((part) => part.valueString ?? part.valueInteger),
    ),
  );
  expect(by).toEqual([
    [],
    [],
    [
      ["abandoned", 20],
      ["dressing only", 10],
    ],
    [["the patient could not tolerate it", 7]],
    [],
  ]);
});

test("chairs are strata that add up to their practice", () => {
  const [stratifier] = groupOf("criterion-line-check", "OAK").stratifier ?? [];
  const strata = stratifier?.stratum ?? [];
  expect(strata.map(({ value }) => value?.text)).toEqual(["OAK-1", "OAK-2"]);
  expect(strata.map(counts)).toEqual([
    {
      ...{ "initial-population": 12, denominator: 12, "denominator-exclusion": 0 },
      ...{ "denominator-exception": 0, numerator: 11 },
    },
    {
      ...{ "initial-population": 10, denominator: 10, "denominator-exclusion": 0 },
      ...{ "denominator-exception": 2, numerator: 7 },
    },
  ]);
  expect(strata[1]?.measureScore?.value).toBeCloseTo(7 / 8, 12);
  expect(groupOf("criterion-isolation", "OAK").stratifier).toBeUndefined();
});

test("without an estimate there is no value and it is said why, never 0", () => {
  const absent = (code: string) => ({
    extension: [{ url: absentReason, valueCode: code }],
  });
  expect(groupOf("criterion-isolation", "ELM").measureScore).toEqual(absent("not-applicable"));
  expect(groupOf("irrigation-time", "ELM").measureScore).toEqual(absent("unknown"));
  const [patients] = groupOf("patients-behind-the-records", "ELM").population ?? [];
  expect(patients?.count).toBeUndefined();
  expect(patients?._count).toEqual(absent("masked"));
  expect(counts(groupOf("patients-behind-the-records", "OAK"))).toEqual({
    "initial-population": 210,
  });
  expect(counts(groupOf("clinicians-behind-the-records", "ELM"))).toEqual({
    "initial-population": 0,
  });
});

test("a masked figure has neither counts nor a score, and says so", () => {
  const masked = further.map((one) => ({ ...one, masked: true as const }));
  const found = resourcesOf(
    madeBundle({ figures: [], composites: [], people: [] }, { further: masked }),
    "MeasureReport",
  );
  expect(found).toHaveLength(further.length);
  for (const [group] of found.map(({ group = [] }) => group)) {
    const said = { extension: [{ url: absentReason, valueCode: "masked" }] };
    expect(group?.measureScore).toEqual(said);
    for (const { count, _count } of group?.population ?? [])
      expect([count, _count]).toEqual([undefined, said]);
    expect(group?.extension?.[0]).toMatchObject({ _valueInteger: said });
    expect(JSON.stringify(group)).not.toMatch(/"(count|valueInteger)":\d/);
  }
});

test("a median is a continuous variable in UCUM's unit", () => {
  const group = groupOf("volume", "OAK");
  expect(counts(group)).toEqual({
    "initial-population": 14,
    "measure-population": 13,
    "measure-population-exclusion": 3,
    "measure-observation": 10,
  });
  expect(extensionOf(group, "uncounted-not-recorded")[0]?.valueInteger).toBe(1);
  expect(group.measureScore).toMatchObject({
    ...{ value: 18.6, unit: "mL", system: "http://unitsofmeasure.org", code: "mL" },
  });
});

test("of separations fewer is better, and what is not recorded is not counted", () => {
  const report = reportOf("separation-per-canal", "OAK");
  expect(report.improvementNotation?.coding?.[0]?.code).toBe("decrease");
  const group = groupOf("separation-per-canal", "OAK");
  expect(counts(group)).toMatchObject({
    ...{ "initial-population": 100, denominator: 96, numerator: 1 },
  });
  expect(group.measureScore?.value).toBeCloseTo(1 / 96, 12);
});

test("overall scores are composites of opportunities and of visits", () => {
  for (const name of ["overall-opportunities", "overall-visits"]) {
    const group = groupOf(name, "OAK");
    expect(counts(group)).toEqual({ "initial-population": 20, denominator: 20, numerator: 12 });
    expect(group.measureScore?.value).toBeCloseTo(0.6, 12);
    expect(extensionOf(group, "counted-not-recorded")[0]?.valueInteger).toBe(3);
  }
});

describe("every report", () => {
  const groups: Counted[] = reports.flatMap(({ group = [] }) =>
    group.flatMap((one) => [
      one,
      ...(one.stratifier ?? []).flatMap(({ stratum = [] }) => stratum as Counted[]),
    ]),
  );

  test("has a score that follows from its populations by FHIR's arithmetic", () => {
    expect(groups.length).toBeGreaterThan(10);
    for (const group of groups) {
      const {
        denominator,
        numerator = 0,
        "denominator-exclusion": left = 0,
        "denominator-exception": excepted = 0,
        "initial-population": all = 0,
        ...median
      } = counts(group);
      if (denominator !== undefined) {
        expect(denominator).toBeLessThanOrEqual(all);
        const counted = denominator - left - excepted;
        expect(numerator).toBeLessThanOrEqual(counted);
        if (counted === 0) expect(group.measureScore?.value).toBeUndefined();
        else expect(group.measureScore?.value).toBeCloseTo(numerator / counted, 11);
      } else if (median["measure-population"] !== undefined) {
        expect(median["measure-population"]).toBeLessThanOrEqual(all);
        expect(median["measure-observation"]).toBe(
          median["measure-population"] - (median["measure-population-exclusion"] ?? 0),
        );
      }
    }
  });

  test("is complete as to its status and a summary as to its type", () => {
    for (const { status, type, period } of reports) {
      expect([status, type]).toEqual(["complete", "summary"]);
      expect(period).toEqual({ start: "2026-07-01", end: "2026-09-30" });
    }
  });
});
