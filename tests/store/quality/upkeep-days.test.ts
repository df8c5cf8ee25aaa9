import { afterAll, beforeAll, expect, it } from "vitest";
import { leadReach, qualityReach } from "@/lib/access/reach";
import { quarter } from "@/lib/records/period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { upkeepDays, upkeepTasks } from "@/lib/store/quality/upkeep-days";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, delivery, visit } from "../bring-in";
import { viewerAs } from "../comparing/viewers";

// Expected values are worked by hand from the rows below.

const officer = qualityReach(viewerAs("quality-officer"));
const period = quarter(2026, 3);
const continuous = { ...delivery, delivery: "continuous" };
const row = {
  ...{ practice: "OAK", chair: "OAK-1", device: "", day: "2026-07-03", task: "line-rinse" },
  ...{ status: "done", duration_s: 45 },
};

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [
      visit,
      { ...visit, session_id: "same day", started_at: "2026-07-03T10:10:00.000Z" },
      { ...visit, session_id: "no record", started_at: "2026-07-06T08:10:00.000Z" },
      { ...visit, session_id: "whole tooth", chair: "OAK-2" },
      { ...visit, session_id: "syringe", chair: "OAK-3" },
      { ...visit, session_id: "last quarter", started_at: "2026-06-30T08:10:00.000Z" },
    ],
    canals: ["V-1", "same day", "no record", "syringe", "last quarter"].map((session_id) => ({
      ...canal,
      session_id,
    })),
    irrigation: [
      ...["V-1", "same day", "no record", "last quarter"].map((session_id) => ({
        ...continuous,
        session_id,
      })),
      { ...continuous, session_id: "whole tooth", canal: "" },
      { ...delivery, session_id: "syringe" },
    ],
    upkeep: [
      { ...row, device: "M2", status: "not-done", duration_s: undefined },
      { ...row, device: "M1" },
      { ...row, task: "line-dry", duration_s: undefined },
      { ...row, chair: "OAK-3", day: "2026-07-04" },
      { ...row, chair: "OAK-3", day: "2026-10-01" },
      { ...row, practice: "ELM", chair: "ELM-1", task: "own-suction" },
    ].map((one) =>
      Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined)),
    ),
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

it("are the days in use with the rows of each device, and the days with rows that were not in use", async () => {
  const of = { practice: "OAK", day: "2026-07-03" };
  expect(await upkeepDays(officer, period, "line-rinse")).toEqual([
    {
      ...{ ...of, chair: "OAK-1", inUse: true },
      devices: [
        { device: "M1", status: "done", durationS: 45 },
        { device: "M2", status: "not-done", durationS: null },
      ],
    },
    { ...of, chair: "OAK-1", day: "2026-07-06", inUse: true, devices: [] },
    { ...of, chair: "OAK-2", inUse: true, devices: [] },
    {
      ...{ ...of, chair: "OAK-3", day: "2026-07-04", inUse: false },
      devices: [{ device: "", status: "done", durationS: 45 }],
    },
  ]);
});

it("are of one task and within the reach", async () => {
  const dry = await upkeepDays(officer, period, "line-dry");
  expect(dry.filter((one) => one.devices.length > 0).map((one) => one.day)).toEqual(["2026-07-03"]);
  expect(dry.filter((one) => one.inUse)).toHaveLength(3);
  const elm = leadReach(viewerAs("clinical-lead", "ELM"));
  expect(await upkeepDays(elm, period, "line-rinse")).toEqual([]);
  expect(await upkeepTasks(elm, period)).toEqual(["own-suction"]);
  expect(await upkeepTasks(officer, period)).toEqual(["line-dry", "line-rinse", "own-suction"]);
  expect(await upkeepTasks(officer, quarter(2026, 4))).toEqual(["line-rinse"]);
});
