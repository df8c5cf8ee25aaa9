import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { qualityReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import type { Values } from "@/lib/records/column";
import { exportAdherence } from "@/lib/reports/adherence-export";
import { adherenceReport } from "@/lib/reports/adherence-report";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { qualityQuarter } from "@/lib/reports/quality-quarter";
import { qualityExport } from "@/lib/reports/quality-report";
import { readPeriod } from "@/lib/reports/read-period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { exportsBefore } from "@/lib/store/quality/exports";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, use, visit } from "../store/bring-in";

// Expected values follow from the definitions of the criteria; worked by hand from the records below.
let database: ScratchDatabase;
const quarter = readPeriod("2026-Q3");
if (!quarter) throw new Error("no such quarter");
const period = quarter;
const officer = of(null);
const ofOak = of("OAK");

function of(practice: string | null): Viewer {
  return {
    userId: "u",
    name: "Quality person",
    email: "q@group.example",
    grants: [{ role: "quality-officer", practice, clinicianKey: null }],
  };
}

/** Days of July 2026 on which OAK-1 was in use, and what became of the rinse. */
const days: { day: string; row?: Values }[] = [
  { day: "2026-07-01", row: { status: "done", duration_s: 30 } },
  { day: "2026-07-02", row: { status: "done", duration_s: 29 } },
  { day: "2026-07-03", row: { status: "done" } },
  { day: "2026-07-06", row: { status: "not-done" } },
  { day: "2026-07-07", row: { status: "out-of-service" } },
  { day: "2026-07-08" },
];

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const at = ({ day }: { day: string }) => `${day}T08:10:00.000Z`;
  const visits = days.map((one, place) => ({
    ...visit,
    session_id: `V-${place}`,
    started_at: at(one),
    ended_at: undefined,
    patient: `hash-${place}`,
  }));
  const elm = { ...visit, session_id: "E-1", practice: "ELM", chair: "ELM-1", patient: "hash-elm" };
  const ids = [...visits, elm].map((one) => one.session_id);
  await bringIn({
    sessions: [...visits, elm],
    canals: ids.map((session_id) => ({ ...canal, session_id })),
    irrigation: visits.map(({ session_id }) => ({
      session_id,
      canal: "MB1",
      seq: 1,
      irrigant: "naocl",
      volume_ml: 4,
      duration_s: 60,
      delivery: "continuous",
    })),
    instruments: [
      { ...use, session_id: "V-0", separated: 1, patient_told: false },
      { ...use, session_id: "V-1", instrument_id: "i-2", separated: 1, patient_told: false },
      { ...use, session_id: "V-2", instrument_id: "i-3", separated: 1, patient_told: true },
    ],
    followups: [{ session_id: "V-1", canal: "MB1", seq: 1, day: "2026-07-20", patient_told: true }],
    steps: ids.map((session_id, place) => ({
      session_id,
      canal: "",
      step: "dam",
      ...(place === 0 ? { status: "excepted", reason: "not-possible" } : { status: "done" }),
    })),
    incidents: [{ session_id: "V-3", kind: "extrusion", patient_told: true }],
    upkeep: days.flatMap(({ day, row }) =>
      row ? [{ practice: "OAK", chair: "OAK-1", day, task: "line-rinse", ...row }] : [],
    ),
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("the line rinse is reported by group, practice and chair, and every chair-day is in one count", async () => {
  const report = await adherenceReport(qualityReach(officer), period);
  const rinse = report.criteria.find((one) => one.criterion.id === "line-rinse");
  expect(rinse?.lines.map((line) => line.about)).toEqual([
    "all practices",
    "practice ELM",
    "practice OAK",
    "chair OAK-1 of OAK",
  ]);
  const chair = rinse?.lines.at(-1);
  expect(chair?.figure).toMatchObject({
    population: 6,
    excluded: { "out-of-service": 1 },
    numerator: 1,
    denominator: 5,
    notMet: 2,
    notRecorded: 2,
  });
  // 2 of 5 not recorded is more than a tenth: not assessable, and said with its counts.
  expect(chair?.inTheseRecords.words).toBe("not assessable: 3 of 5 recorded, 90 % is the least");
  // ELM has one patient, and the whole less OAK would be ELM: both are masked, and ELM is not said to have none.
  expect(rinse?.lines.map((line) => line.masked ?? false)).toEqual([true, true, false, false]);
  expect(rinse?.lines[1]?.words.rate).toMatch(/^masked: fewer than 5 patients/);
});

test("the calendar says of each day what became of the rinse", async () => {
  const { upkeep } = await qualityQuarter(officer, { period: "2026-Q3", practice: "OAK" });
  expect(upkeep.legend.map((one) => [one.words, one.days])).toEqual([
    ["rinsed 30 s or longer", "1"],
    ["rinsed under 30 s", "1"],
    ["rinsed, no duration recorded", "1"],
    ["not rinsed", "1"],
    ["out of service", "1"],
    ["no record", "1"],
  ]);
  const shown = upkeep.chairs[0]?.calendar.rows
    .flatMap((row) => row.days)
    .filter((one) => one !== null && one.tone !== "faint")
    .map((one) => one?.words);
  expect(shown?.sort()).toEqual([
    "1 Jul 2026: rinsed for 30 s",
    "2 Jul 2026: rinsed for 29 s, under 30 s",
    "3 Jul 2026: rinsed, no duration recorded",
    "6 Jul 2026: not rinsed",
    "7 Jul 2026: out of service",
    "8 Jul 2026: no record",
  ]);
});

test("safety lists have counts and dates; a follow-up that says the patient was told settles a separation; few people are masked", async () => {
  const { safety } = await qualityQuarter(officer, { period: "2026-Q3" });
  expect(
    safety.map((line) => [line.what, line.events, line.days, line.told, line.patients]),
  ).toEqual([
    [
      "separation, patient not known to have been told or outcome pending",
      "1",
      "1 Jul 2026",
      "no 1",
      "masked (fewer than 5)",
    ],
    ["extrusion", "1", "6 Jul 2026", "yes 1", "masked (fewer than 5)"],
  ]);
});

test("nothing that the quality officer gets names a clinician", async () => {
  const view = await qualityQuarter(officer, { period: "2026-Q3" });
  const files = await Promise.all(
    ["csv", "json"].map((format) => qualityExport(officer, { period: "2026-Q3", format })),
  );
  const texts = files.map(({ bytes }) => Buffer.from(bytes).toString("utf8"));
  for (const given of [JSON.stringify(view), ...texts]) {
    expect(given).toContain("OAK-1");
    expect(given).not.toContain("C01");
  }
});

test("an export is kept with the digest of its bytes, who made it and what it speaks of; a practice's officer sees their own", async () => {
  const group = qualityReach(officer);
  const before = (await exportsBefore(group, 100)).length;
  const whole = await exportAdherence(group, period, "csv");
  const oak = await exportAdherence(qualityReach(ofOak), period, "csv");
  expect(whole.name).toBe("adherence-2026-Q3.csv");
  expect(oak.name).toBe("adherence-2026-Q3-OAK.csv");
  const [second, first] = await exportsBefore(group, 100);
  expect((await exportsBefore(group, 100)).length).toBe(before + 2);
  expect(first).toMatchObject({
    by: "Quality person",
    period: "2026-Q3",
    practices: [],
    sha256: createHash("sha256").update(whole.bytes).digest("hex"),
  });
  expect(second).toMatchObject({ practices: ["OAK"] });
  expect((await exportsBefore(qualityReach(ofOak), 100)).map((one) => one.practices)).toEqual([
    ["OAK"],
  ]);
});

test("another practice, or none such, is not shown", async () => {
  await expect(qualityQuarter(ofOak, { practice: "ELM" })).rejects.toThrow(AskedWrongly);
  await expect(qualityQuarter(officer, { period: "2026-Q5" })).rejects.toThrow(AskedWrongly);
  const keeper: Viewer = {
    ...officer,
    grants: [{ role: "record-keeper", practice: null, clinicianKey: null }],
  };
  await expect(qualityQuarter(keeper, {})).rejects.toThrow(Refused);
  const own = await qualityQuarter(ofOak, {});
  expect(JSON.stringify(own)).not.toContain("ELM");
});
