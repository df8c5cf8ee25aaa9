import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { leadReach, ownReach, qualityReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import { quarter } from "@/lib/records/period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { safetyEvents } from "@/lib/store/quality/safety-events";
import { type SafetyAsked, safetyList } from "@/lib/store/quality/safety-list";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, use, visit } from "../bring-in";
import { viewerAs } from "../comparing/viewers";

// Expected values are worked by hand: what follows what, and what the follow-ups say last.

const lead = leadReach(viewerAs("clinical-lead"));
const officer = qualityReach(viewerAs("quality-officer"));
const one = ownReach(viewerAs("clinician", "OAK", "OAK/C01"));
const two = ownReach(viewerAs("clinician", "OAK", "OAK/C02"));
const period = quarter(2026, 3);
const asked: SafetyAsked = { period, open: false, limit: 50, offset: 0 };

/** Irrigants in the order of seq in a canal, or with a minute past nine where timed. */
function poured(
  session_id: string,
  canalName: string,
  irrigants: string,
  minutes?: number[],
): Values[] {
  return irrigants.split(" ").map((irrigant, place) => ({
    ...{ session_id, canal: canalName, seq: place + 1, irrigant, delivery: "syringe" },
    ...(minutes
      ? { started_at: `2026-07-03T09:${String(minutes[place]).padStart(2, "0")}:00.000Z` }
      : {}),
  }));
}
function visits(...sessions: string[]): Values[] {
  return sessions.map((session_id) => ({ ...visit, session_id, patient: `of ${session_id}` }));
}
function separated(seq: number, others: Values): Values {
  return { ...use, seq, instrument_id: `i-${seq}`, separated: 1, ...others };
}

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [
      ...visits("V-1", "by-seq", "rinsed", "timed", "timed-rinsed", "half-timed", "whole", "mixed"),
      { ...visit, session_id: "before", started_at: "2026-06-30T08:00:00.000Z" },
    ],
    canals: [
      ...["V-1", "by-seq", "rinsed", "timed", "timed-rinsed", "half-timed", "mixed"].flatMap(
        (session_id) => [
          { ...canal, session_id },
          { ...canal, session_id, canal: "DB", clinician: "C02" },
        ],
      ),
      { ...canal, session_id: "before" },
    ],
    irrigation: [
      // EDTA in between takes nothing away; the second change is another contact. DB has its own order.
      ...poured("by-seq", "MB1", "naocl naocl edta chx naocl"),
      ...poured("by-seq", "DB", "naocl saline chx"),
      ...poured("rinsed", "MB1", "naocl water chx saline naocl"),
      // By seq nothing meets within a canal; by time MB1's hypochlorite of 9:10 meets DB's chlorhexidine of 9:12.
      ...poured("timed", "MB1", "naocl saline", [10, 20]),
      ...poured("timed", "DB", "water chx", [5, 12]),
      // By seq it would meet; by time water of the other canal lies in between.
      ...poured("timed-rinsed", "MB1", "naocl chx", [10, 20]),
      ...poured("timed-rinsed", "DB", "water", [15]),
      // One has no time: by seq within the canals.
      ...poured("half-timed", "MB1", "naocl chx", [10, 20]),
      ...poured("half-timed", "DB", "water"),
      // Written for the whole tooth, nothing else: its own order. Beside a canal's it has no place.
      ...poured("whole", "", "chx naocl"),
      ...poured("mixed", "", "chx chx"),
      ...poured("mixed", "MB1", "naocl"),
      ...poured("before", "MB1", "naocl chx"),
    ],
    instruments: [
      separated(1, { patient_told: true, management: "retrieved" }),
      separated(2, {
        patient_told: false,
        management: "retained",
        third: "apical",
        fragment_mm: 3,
      }),
      separated(3, { management: "bypassed" }),
      separated(4, { patient_told: true, management: "pending" }),
      // Told and settled later.
      separated(5, { patient_told: false, management: "pending" }),
      // Settled, but then pending again.
      separated(6, { patient_told: true, management: "retained" }),
      separated(7, { canal: "DB", uses: 5, separated: 2 }),
      { ...use, seq: 8, instrument_id: "i-8" },
    ],
    followups: [
      { session_id: "V-1", canal: "MB1", seq: 5, day: "2026-07-20", management: "referred" },
      { session_id: "V-1", canal: "MB1", seq: 5, day: "2026-07-10", patient_told: true },
      { session_id: "V-1", canal: "MB1", seq: 6, day: "2026-07-20", management: "pending" },
      { session_id: "V-1", canal: "MB1", seq: 6, day: "2026-07-10", management: "bypassed" },
    ],
    incidents: [
      { session_id: "V-1", kind: "extrusion", patient_told: true, reported: true },
      { session_id: "rinsed", kind: "allergy", patient_told: true },
    ],
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const list = async (reach: Parameters<typeof safetyList>[0], more: Partial<SafetyAsked> = {}) =>
  (await safetyList(reach, { ...asked, ...more })).items;
const named = async (reach: Parameters<typeof safetyList>[0], more: Partial<SafetyAsked> = {}) =>
  (await list(reach, more))
    .map((item) => [item.sessionId, item.what, item.kind, item.canal, item.seq].join(" ").trim())
    .sort();

describe("contacts", () => {
  it("are every change between the two without saline or water in between, and say by what order", async () => {
    expect(await named(lead, { kind: "contact" })).toEqual([
      "by-seq contact seq MB1 4",
      "by-seq contact seq MB1 5",
      "half-timed contact seq MB1 2",
      "timed contact time DB 2",
      "whole contact seq  2",
    ]);
  });

  it("name what was there before, its canal and the times", async () => {
    const [timed] = (await list(lead, { kind: "contact" })).filter((item) => item.kind === "time");
    expect(timed?.met).toMatchObject({ first: "naocl", canalBefore: "MB1", seqBefore: 1 });
    expect(new Date(timed?.met?.startedAt ?? "").toISOString()).toBe("2026-07-03T09:12:00.000Z");
    expect(new Date(timed?.met?.startedBefore ?? "").toISOString()).toBe(
      "2026-07-03T09:10:00.000Z",
    );
  });
});

describe("separations", () => {
  it("are listed where the patient is not known to have been told, or where it is pending", async () => {
    const seqs = async (kind: SafetyAsked["kind"]) =>
      (await list(lead, { kind })).map(({ seq }) => seq).sort();
    expect(await seqs("separation-untold")).toEqual([2, 3, 7]);
    expect(await seqs("separation-pending")).toEqual([4, 6]);
  });

  it("carry what is known of them", async () => {
    const items = await list(lead, { kind: "separation-untold" });
    expect(items.find(({ seq }) => seq === 2)).toMatchObject({
      ...{ patientTold: false, management: "retained", third: "apical", fragmentMm: 3, events: 1 },
      ...{ practice: "OAK", day: "2026-07-03", tooth: "26", clinician: "C01" },
    });
    expect(items.find(({ seq }) => seq === 7)).toMatchObject({
      ...{ patientTold: null, management: null, events: 2, clinician: "C02" },
    });
  });
});

describe("the list", () => {
  it("counts the period, says what is open and whose, and is paged", async () => {
    const found = await safetyList(lead, { ...asked, limit: 3, offset: 3 });
    expect(found.items).toHaveLength(3);
    expect(found.all).toBe(12);
    expect(found.totals).toEqual({
      ...{ contact: 5, "separation-untold": 4, "separation-pending": 2, incident: 2 },
      // Five rows of separations and the allergy that nobody is known to have reported.
      open: 6,
    });
    expect(found.workers).toEqual([
      { key: "OAK/C01", code: "C01" },
      { key: "OAK/C02", code: "C02" },
    ]);
    expect(await named(lead, { kind: "incident", open: true })).toEqual([
      "rinsed incident allergy",
    ]);
    expect(await named(lead, { worker: "OAK/C02" })).toEqual([
      "V-1 separation  DB 7",
      "timed contact time DB 2",
    ]);
    expect(await list(leadReach(viewerAs("clinical-lead", "ELM")))).toEqual([]);
  });

  it("shows a clinician what is theirs, by the canal or by the visit", async () => {
    expect(await named(two)).toEqual(["V-1 separation  DB 7", "timed contact time DB 2"]);
    const own = await named(one);
    expect(own).toHaveLength(11);
    expect(own).not.toContain("V-1 separation  DB 7");
    await expect(list(officer)).rejects.toThrow(RangeError);
  });
});

it("without visits: counts, days and patients, and no visit or person", async () => {
  const { events, patients } = await safetyEvents(officer, period);
  expect(events.map((event) => event.what).sort()).toEqual([
    ...Array.from({ length: 5 }, () => "contact"),
    ...["incident", "incident"],
    ...Array.from({ length: 5 }, () => "separation"),
  ]);
  expect(new Set(events.flatMap((event) => Object.keys(event)))).toEqual(
    new Set(["what", "kind", "practice", "day", "events", "patientTold", "reported", "pending"]),
  );
  expect(patients).toEqual([
    { what: "contact", kind: "", practice: "OAK", patients: 4 },
    { what: "incident", kind: "allergy", practice: "OAK", patients: 1 },
    { what: "incident", kind: "extrusion", practice: "OAK", patients: 1 },
    { what: "separation", kind: "", practice: "OAK", patients: 1 },
  ]);
});
