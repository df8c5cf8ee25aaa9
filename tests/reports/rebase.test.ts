import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { leadReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { setRebase, takeRebaseBack } from "@/lib/reports/rebase";
import { rebasesOf } from "@/lib/store/comparing/rebases";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { viewerAs } from "../store/comparing/viewers";
import { insertFacts } from "./fact-rows";

// Expected values are the project's own rules: a lead sets limits anew on lines within their reach, with a reason.

const lead = viewerAs("clinical-lead");
const ofNorth = viewerAs("clinical-lead", "NORTH");
const form = { measure: "volume", period: "2026-Q3", month: "2026-05", reason: "new pump" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const day = "2026-08-03";
  await insertFacts(pool(), [
    { practice: "NORTH", code: "A1", day, volume: 9 },
    { practice: "SOUTH", code: "S1", day, volume: 9 },
    // Not in the quarter, but in the four that end with it.
    { practice: "NORTH", code: "B2", day: "2026-02-03", volume: 9 },
    { practice: "NORTH", code: "C3", day: "2025-02-03", volume: 9 },
  ]);
});
afterEach(async () => {
  await pool().query("truncate rebases");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const lines = async () =>
  (
    await pool().query<{ line: string }>(
      "select kind || ' ' || subject as line from rebases where withdrawn_at is null order by id",
    )
  ).rows.map(({ line }) => line);

test("is set on the line that the page shows: the whole, a practice, or a clinician", async () => {
  const asked: Record<string, string>[] = [
    {},
    { practice: "NORTH" },
    { whose: "practice:SOUTH" },
    { whose: "clinician:NORTH/A1" },
    { practice: "NORTH", whose: "clinician:NORTH/B2" },
  ];
  for (const of of asked) expect((await setRebase(lead, { ...form, ...of })).done).toBeDefined();
  expect(await lines()).toEqual([
    "group ",
    "practice NORTH",
    "practice SOUTH",
    "clinician NORTH/A1",
    "clinician NORTH/B2",
  ]);
});

test("is refused on a line that is nobody's or not within the reach", async () => {
  const set = (of: Record<string, string>, viewer = lead) => setRebase(viewer, { ...form, ...of });
  await expect(set({ whose: "clinician:NORTH/Z9" })).rejects.toThrow(Refused);
  await expect(set({ whose: "clinician:NORTH/C3" })).rejects.toThrow(Refused);
  await expect(set({ whose: "chair:NORTH/R1" })).rejects.toThrow(Refused);
  await expect(set({ practice: "NORTH", whose: "clinician:SOUTH/S1" })).rejects.toThrow(Refused);
  await expect(set({ whose: "clinician:SOUTH/S1" }, ofNorth)).rejects.toThrow(Refused);
  await expect(set({ whose: "practice:SOUTH" }, ofNorth)).rejects.toThrow(Refused);
  await expect(set({ practice: "SOUTH" }, ofNorth)).rejects.toThrow(Refused);
  await expect(set({ measure: "speed" })).rejects.toThrow(Refused);
  await expect(set({ period: "soon" })).rejects.toThrow(Refused);
  for (const role of ["quality-officer", "clinician", "administrator", "record-keeper"] as const)
    await expect(set({}, viewerAs(role, null, "NORTH/A1"))).rejects.toThrow(Refused);
  expect(await lines()).toEqual([]);
  // The whole of a lead of one practice is that practice, not all practices.
  expect((await set({}, ofNorth)).done).toBeDefined();
  expect(await lines()).toHaveLength(1);
  const north = { measure: "volume", kind: "practice", subject: "NORTH" } as const;
  expect(await rebasesOf(leadReach(lead), north)).toHaveLength(1);
});

test("says beside each field what is wrong with it", async () => {
  const wrong = async (typed: Record<string, string>) =>
    Object.keys((await setRebase(lead, { ...form, ...typed })).wrong ?? {});
  expect(await wrong({ month: "2026-13", reason: "  " })).toEqual(["month", "reason"]);
  expect(await wrong({ month: "2026-5" })).toEqual(["month"]);
  expect(await wrong({ reason: "x".repeat(301) })).toEqual(["reason"]);
  expect(await lines()).toEqual([]);
});

test("is taken back once, and not through another line", async () => {
  await setRebase(lead, { ...form, practice: "NORTH" });
  const line = { measure: "volume", kind: "practice", subject: "NORTH" } as const;
  const id = String((await rebasesOf(leadReach(lead), line))[0]?.id);
  expect((await takeRebaseBack(lead, { ...form, practice: "SOUTH", id })).done).toBeUndefined();
  await expect(
    takeRebaseBack(viewerAs("clinical-lead", "SOUTH"), { ...form, practice: "NORTH", id }),
  ).rejects.toThrow(Refused);
  expect(await lines()).toHaveLength(1);
  expect((await takeRebaseBack(lead, { ...form, practice: "NORTH", id })).done).toBeDefined();
  expect((await takeRebaseBack(lead, { ...form, practice: "NORTH", id })).wrong?.form).toMatch(
    /already/,
  );
  expect(await lines()).toEqual([]);
});
