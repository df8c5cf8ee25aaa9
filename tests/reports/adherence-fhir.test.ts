import { createHash } from "node:crypto";
import type * as r4 from "fhir/r4";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { exportAdherence } from "@/lib/reports/adherence-export";
import { furtherMeasures } from "@/lib/reports/further-measures";
import { readPeriod } from "@/lib/reports/read-period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { exportsBefore } from "@/lib/store/quality/exports";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, delivery, use, visit } from "../store/bring-in";
import { resourcesOf, validators } from "../views/fhir/r4-validators";

/*
 * Expected values: worked by hand from two records; that the bundle is HL7 FHIR R4 (4.0.1; measurereport.html, measure.html,
 * codesystem-measure-population.html) is said by the two validators of tests/views/fhir.
 */
let database: ScratchDatabase;
const period = readPeriod("2026-Q3");
if (!period) throw new Error("no such quarter");
const of = period;
const officer: Viewer = {
  userId: "u",
  name: "Quality person",
  email: "q@group.example",
  grants: [{ role: "quality-officer", practice: null, clinicianKey: null }],
};

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  // Six patients at each practice, as fewer would be masked; the second has no canal.
  const six = Array.from({ length: 6 }, (_, place) => String(place));
  const of = (place: string) => ({ session_id: `V-${place}`, patient: `hash-${place}` });
  const elsewhere = { practice: "ELM", chair: "ELM-1", ended_at: undefined };
  const all = six.map((place) => ({ session_id: `V-${place}` }));
  await bringIn({
    sessions: [
      ...six.map((place) => ({ ...visit, ...of(place), ended_at: undefined })),
      ...six.map((place) => ({ ...visit, ...of(`elm-${place}`), ...elsewhere })),
    ],
    canals: all.map((one) => ({ ...canal, ...one })),
    steps: all.map((one) => ({ ...one, canal: "", step: "dam", status: "done" })),
    irrigation: all.map((one) => ({ ...delivery, ...one })),
    instruments: all.map((one) => ({ ...use, ...one })),
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("the report is a bundle under the fingerprint of every format, and both validators find nothing wrong", async () => {
  const reach = qualityReach(officer);
  const file = await exportAdherence(reach, of, "fhir");
  expect([file.name, file.type]).toEqual(["adherence-2026-Q3.fhir.json", "application/fhir+json"]);
  const json = await exportAdherence(reach, of, "json");
  expect(file.fingerprint).toBe(json.fingerprint);
  const bundle: r4.Bundle<r4.FhirResource> = JSON.parse(Buffer.from(file.bytes).toString("utf8"));
  expect(bundle.identifier?.value).toBe(createHash("sha256").update(json.bytes).digest("hex"));
  expect(bundle.timestamp).toBe(file.report.cutOff);
  for (const wrongWith of Object.values(validators)) {
    expect(wrongWith(bundle)).toEqual([]);
    for (const { resource } of bundle.entry ?? []) expect(wrongWith(resource)).toEqual([]);
  }
  const kept = await exportsBefore(reach, 2);
  expect(kept.map(({ format }) => format)).toEqual(["json", "fhir"]);
  expect(kept[1]?.sha256).toBe(createHash("sha256").update(file.bytes).digest("hex"));
  expect((await exportAdherence(reach, of, "fhir")).sha256).toBe(file.sha256);
});

test("each practice has its own report of each measure, and no clinician has one", async () => {
  const file = await exportAdherence(qualityReach(officer), of, "fhir");
  const text = Buffer.from(file.bytes).toString("utf8");
  expect(text).not.toMatch(/Practitioner|"C01"|C01|hash-/);
  const bundle: r4.Bundle<r4.FhirResource> = JSON.parse(text);
  const measures = resourcesOf(bundle, "Measure");
  const reports = resourcesOf(bundle, "MeasureReport");
  expect(measures.filter(({ url }) => url?.includes("/criterion-"))).toHaveLength(
    file.report.criteria.length,
  );
  const oak = bundle.entry?.find(
    ({ resource }) => resource?.resourceType === "Organization" && resource.name === "practice OAK",
  )?.fullUrl;
  const reportOf = (id: string) =>
    reports.find(
      ({ measure, reporter }) => measure.includes(`/${id}|`) && reporter?.reference === oak,
    );
  for (const { url, version } of measures) {
    const some = reports.filter(({ measure }) => measure === `${url}|${version}`);
    expect(new Set(some.map(({ reporter }) => reporter?.reference)).size).toBe(some.length);
    // Overall scores are of practices with an opportunity.
    if (!url?.includes("/overall-")) expect(some).toHaveLength(2);
  }
  expect(reportOf("criterion-isolation")?.group?.[0]?.measureScore?.value).toBe(1);
  expect(reportOf("volume")?.group?.[0]?.measureScore).toMatchObject({ value: 4.5, code: "mL" });
  expect(reportOf("irrigation-time")?.group?.[0]?.measureScore).toMatchObject({
    ...{ value: 60, code: "s" },
  });
  const separations = reportOf("separation-per-canal")?.group?.[0];
  expect(separations?.measureScore?.value).toBe(0);
  expect(separations?.population?.map(({ count }) => count)).toEqual([6, 6, 0, 0, 0]);
  const [patients] = reportOf("patients-behind-the-records")?.group?.[0]?.population ?? [];
  expect(patients?.count).toBe(6);
  // One clinician each: masked, not 1 and not 0.
  const [clinicians] = reportOf("clinicians-behind-the-records")?.group?.[0]?.population ?? [];
  expect(clinicians?.count).toBeUndefined();
  expect(clinicians?._count?.extension?.[0]?.valueCode).toBe("masked");
});

test("a practice without units has further figures that say so", async () => {
  const figures = await furtherMeasures(holderReach().figures, of);
  expect(figures.map(({ measure, about }) => [measure, "code" in about && about.code])).toEqual(
    [
      ...["irrigation-time", "volume", "hypochlorite-time", "hypochlorite-volume"],
      "separation-per-canal",
    ].flatMap((measure) => [
      [measure, "ELM"],
      [measure, "OAK"],
    ]),
  );
  expect(figures[0]).toMatchObject({ estimate: null, population: 0 });
});
