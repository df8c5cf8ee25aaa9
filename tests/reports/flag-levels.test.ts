import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { leadReach, peopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { changeFlagLevels, flagLevelsPage, levelsInForce } from "@/lib/reports/flag-levels";
import { chosenLevels } from "@/lib/store/comparing/flag-levels";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { viewerAs } from "../store/comparing/viewers";

// Expected values are the project's own rules: 5 % and 0.2 % unless others were chosen, the latest in force, none lost.

const administrator = viewerAs("administrator");
const lead = leadReach(viewerAs("clinical-lead"));
const good = { look: "1", lookFirst: "0,1", reason: "Too many looks for our few hours." };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterEach(async () => {
  await pool().query("truncate flag_levels");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const stored = () => chosenLevels(peopleReach(administrator));

test("as long as nobody has chosen any the standard levels are in force, with their reason", async () => {
  expect(await levelsInForce(lead)).toEqual({ look: 0.05, lookFirst: 0.002 });
  const page = await flagLevelsPage(administrator);
  expect(page).toMatchObject({ look: "5 %", lookFirst: "0.2 %", mayChange: true, before: [] });
  expect(page.reason).toMatch(/Spiegelhalter 2005/);
});

test("the latest are in force, in per cent with a point or a comma, and earlier ones are kept", async () => {
  expect((await changeFlagLevels(administrator, good)).done).toBeDefined();
  expect(await levelsInForce(lead)).toEqual({ look: 0.01, lookFirst: 0.001 });
  await changeFlagLevels(administrator, { ...good, look: " 2.5 ", reason: " Too few. " });
  expect(await levelsInForce(lead)).toEqual({ look: 0.025, lookFirst: 0.001 });
  expect(await stored()).toMatchObject([
    { look: 0.025, reason: "Too few.", by: "A administrator" },
    { look: 0.01, reason: good.reason },
  ]);
  const page = await flagLevelsPage(administrator);
  expect([page.look, page.fields]).toEqual(["2.5 %", { look: "2.5", lookFirst: "0.1" }]);
  expect(page.reason).toMatch(/^Too few\. \(A administrator, /);
  expect(page.before.map(({ words }) => words.split(":")[0])).toEqual([
    "look under 1 %, look first under 0.1 %",
    "look under 5 %, look first under 0.2 %",
  ]);
});

test("what is wrong is said beside each field, and nothing is stored", async () => {
  const wrong = async (typed: Record<string, string>) =>
    Object.keys((await changeFlagLevels(administrator, { ...good, ...typed })).wrong ?? {}).sort();
  expect(await wrong({ look: "many", lookFirst: "", reason: " " })).toEqual([
    "look",
    "lookFirst",
    "reason",
  ]);
  expect(await wrong({ look: "0.09" })).toEqual(["look"]);
  expect(await wrong({ look: "20.1" })).toEqual(["look"]);
  expect(await wrong({ lookFirst: "0.009" })).toEqual(["lookFirst"]);
  expect(await wrong({ lookFirst: "5.1", look: "20" })).toEqual(["lookFirst"]);
  expect(await wrong({ lookFirst: "1.1" })).toEqual(["lookFirst"]);
  expect(await wrong({ reason: "x".repeat(501) })).toEqual(["reason"]);
  expect((await changeFlagLevels(administrator, {})).wrong).toBeDefined();
  expect(await stored()).toEqual([]);
  // Ends are allowed, and both the same.
  expect(await wrong({ look: "20", lookFirst: "5" })).toEqual([]);
  expect(await wrong({ look: "0.1", lookFirst: "0.1" })).toEqual([]);
});

test("an administrator of one practice may look and not change; others may neither", async () => {
  const ofOne = viewerAs("administrator", "NORTH");
  expect((await flagLevelsPage(ofOne)).mayChange).toBe(false);
  await expect(changeFlagLevels(ofOne, good)).rejects.toThrow(Refused);
  for (const role of ["clinical-lead", "quality-officer", "record-keeper"] as const) {
    await expect(flagLevelsPage(viewerAs(role))).rejects.toThrow(Refused);
    await expect(changeFlagLevels(viewerAs(role), good)).rejects.toThrow(Refused);
  }
  expect(await stored()).toEqual([]);
});
