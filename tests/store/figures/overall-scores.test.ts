import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, qualityReach } from "@/lib/access/reach";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { quarter } from "@/lib/records/period";
import { composites } from "@/lib/reports/composite";
import { disconnect, pool } from "@/lib/store/database";
import { opportunities } from "@/lib/store/figures/opportunities";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, visit } from "../bring-in";
import { putVersions } from "./put-in-force";

// Expected values follow from the definition of an opportunity; worked by hand from the records below.

const period = quarter(2026, 3);
const ids = ["V-1", "V-2", "V-3"];

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: ids.map((session_id, place) => ({
      ...visit,
      session_id,
      patient: `hash-${place}`,
      started_at: `2026-07-0${place + 1}T08:10:00.000Z`,
      ended_at: undefined,
    })),
    // V-1: of two canals one was done by somebody else, and its timer is not recorded.
    // V-2: of two canals one timer was not reset and one is not recorded.
    // V-3: the timer was reset.
    canals: [
      { ...canal, session_id: "V-1", canal: "MB1", timer_reset: "yes" },
      { ...canal, session_id: "V-1", canal: "DB", clinician: "C02", timer_reset: undefined },
      { ...canal, session_id: "V-2", canal: "MB1", timer_reset: "no" },
      { ...canal, session_id: "V-2", canal: "DB", timer_reset: undefined },
      { ...canal, session_id: "V-3", canal: "MB1", timer_reset: "yes" },
    ],
    // A continuous delivery asks for the line to be checked, at V-3 alone.
    irrigation: [
      {
        session_id: "V-3",
        canal: "MB1",
        seq: 1,
        irrigant: "saline",
        volume_ml: 4,
        duration_s: 60,
        delivery: "continuous",
      },
    ],
    // The dam at V-2 is rightly missing: no opportunity.
    steps: [
      { session_id: "V-1", canal: "", step: "dam", status: "done" },
      { session_id: "V-2", canal: "", step: "dam", status: "excepted", reason: "not-possible" },
      { session_id: "V-3", canal: "", step: "dam", status: "done" },
      { session_id: "V-3", canal: "", step: "line-check", status: "not-done" },
    ],
  });
  // Every other criterion is put out of force, so that four remain to be worked by hand.
  await putVersions(["OAK"], defaults);
  await pool().query("update criterion_versions set in_force = false where criterion <> all($1)", [
    ["isolation", "timer-reset", "line-check", "record-complete"],
  ]);
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const counted = async (kind: "practice" | "clinician") =>
  (await opportunities(holderReach().figures, { periods: [period], by: [kind] })).map(
    ({ subject, opportunities, visits, byCriterion }) => ({
      who: "code" in subject ? subject.code : "",
      opportunities,
      visits,
      criteria: byCriterion.map(({ criterion, met, of }) => `${criterion} ${met} of ${of}`),
    }),
  );

test("a criterion is one opportunity a visit, met when all its units are; the record's own is left out", async () => {
  // Isolation: V-1 and V-3. Timer: V-1 not recorded, V-2 not met whatever is not recorded beside it, V-3 met. Line: V-3 not met.
  expect(await counted("practice")).toEqual([
    {
      who: "OAK",
      opportunities: { met: 3, of: 6, notRecorded: 1 },
      visits: { met: 0, of: 3, notRecorded: 1 },
      criteria: ["isolation 2 of 2", "timer-reset 1 of 3", "line-check 0 of 1"],
    },
  ]);
});

test("a clinician's are of the visits they led, whoever else worked there, without what is done together", async () => {
  expect(await counted("clinician")).toEqual([
    {
      who: "C01",
      opportunities: { met: 3, of: 5, notRecorded: 1 },
      visits: { met: 1, of: 3, notRecorded: 1 },
      criteria: ["isolation 2 of 2", "timer-reset 1 of 3"],
    },
  ]);
});

test("a reach that does not tell clinicians apart has none", async () => {
  const officer = qualityReach({
    userId: "u",
    name: "Quality person",
    email: "q@group.example",
    grants: [{ role: "quality-officer", practice: null, clinicianKey: null }],
  });
  const found = await composites(officer, {
    periods: [period],
    by: ["group", "practice", "clinician"],
  });
  expect(found.map(({ about }) => about.kind)).toEqual(["group", "practice"]);
});

test("a criterion written later counts from the day of its writing, whatever day it is in force from", async () => {
  await pool().query(
    "update criterion_versions set written_on = '2026-07-02' where criterion = 'isolation' and in_force",
  );
  const [practice] = await counted("practice");
  // V-1 lies before that day, and the dam at V-2 is excepted.
  expect(practice?.criteria).toEqual([
    "isolation 1 of 1",
    "timer-reset 1 of 3",
    "line-check 0 of 1",
  ]);
});
