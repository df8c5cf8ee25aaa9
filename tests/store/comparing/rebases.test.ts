import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { holderReach, leadReach, ownReach, qualityReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { type Line, rebase, rebasesOf, withdrawRebase } from "@/lib/store/comparing/rebases";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { viewerAs } from "./viewers";

// Expected values are the project's own rules: who may set limits anew, and that nothing of it is lost.

const lead = leadReach(viewerAs("clinical-lead"));
const north: Line = { measure: "volume", kind: "practice", subject: "NORTH" };
const group: Line = { measure: "volume", kind: "group", subject: "" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterEach(async () => {
  await pool().query("truncate rebases");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const inForce = async (line = north) =>
  (await rebasesOf(lead, line)).map(({ month, reason }) => [month, reason]);
const rows = async () =>
  (
    await pool().query<{ reason: string; withdrawn_by: string | null; withdrawn: boolean }>(
      "select reason, withdrawn_by, withdrawn_at is not null as withdrawn from rebases order by id",
    )
  ).rows;

test("a rebase carries its reason, who and when, the oldest month first, and holds for its line alone", async () => {
  const before = Date.now();
  await rebase(lead, north, { month: "2026-05", reason: "new pump" });
  await rebase(lead, north, { month: "2026-02", reason: "new protocol" });
  await rebase(lead, { ...north, subject: "SOUTH" }, { month: "2026-03", reason: "south" });
  await rebase(
    lead,
    { ...north, measure: "irrigation-time" },
    { month: "2026-03", reason: "time" },
  );
  expect(await inForce()).toEqual([
    ["2026-02", "new protocol"],
    ["2026-05", "new pump"],
  ]);
  const [first] = await rebasesOf(lead, north);
  expect(first?.by).toBe("A clinical-lead");
  expect(first?.at.getTime()).toBeGreaterThan(before - 60_000);
  expect(await inForce(group)).toEqual([]);
});

test("one of the same month takes the place of the earlier, which is kept as withdrawn", async () => {
  await rebase(lead, north, { month: "2026-05", reason: "new pump" });
  await rebase(lead, north, { month: "2026-05", reason: "new pump and new needles" });
  expect(await inForce()).toEqual([["2026-05", "new pump and new needles"]]);
  expect(await rows()).toEqual([
    { reason: "new pump", withdrawn_by: "A clinical-lead", withdrawn: true },
    { reason: "new pump and new needles", withdrawn_by: null, withdrawn: false },
  ]);
});

test("one that is taken back is kept, can be taken back once, and only on its own line", async () => {
  await rebase(lead, north, { month: "2026-05", reason: "new pump" });
  const id = (await rebasesOf(lead, north))[0]?.id ?? -1;
  expect(await withdrawRebase(lead, { ...north, subject: "SOUTH" }, id)).toBe(false);
  expect(await withdrawRebase(lead, north, id + 1)).toBe(false);
  expect(await inForce()).toHaveLength(1);
  expect(await withdrawRebase(lead, north, id)).toBe(true);
  expect(await withdrawRebase(lead, north, id)).toBe(false);
  expect(await inForce()).toEqual([]);
  expect(await rows()).toEqual([
    { reason: "new pump", withdrawn_by: "A clinical-lead", withdrawn: true },
  ]);
});

test("a reach that tells no clinicians apart sets and takes back nothing, but sees", async () => {
  const officer = qualityReach(viewerAs("quality-officer"));
  await rebase(lead, north, { month: "2026-05", reason: "new pump" });
  const id = (await rebasesOf(officer, north))[0]?.id ?? -1;
  const chosen = { month: "2026-06", reason: "more" };
  await expect(rebase(officer, north, chosen)).rejects.toThrow(Refused);
  await expect(withdrawRebase(officer, north, id)).rejects.toThrow(Refused);
  expect(await inForce()).toEqual([["2026-05", "new pump"]]);
});

test("the line of all practices is for a lead of all: a smaller whole has none of its rebases", async () => {
  const ofNorth = leadReach(viewerAs("clinical-lead", "NORTH"));
  const chosen = { month: "2026-06", reason: "more" };
  await rebase(holderReach().figures, group, { month: "2026-05", reason: "new pump" });
  const id = (await rebasesOf(lead, group))[0]?.id ?? -1;
  await expect(rebase(ofNorth, group, chosen)).rejects.toThrow(Refused);
  await expect(withdrawRebase(ofNorth, group, id)).rejects.toThrow(Refused);
  expect(await rebasesOf(ofNorth, group)).toEqual([]);
  expect(await rebasesOf(ownReach(viewerAs("clinician", "NORTH", "NORTH/A1")), group)).toEqual([]);
  await rebase(ofNorth, north, chosen);
  expect(await inForce(group)).toEqual([["2026-05", "new pump"]]);
  expect(await inForce()).toEqual([["2026-06", "more"]]);
});
