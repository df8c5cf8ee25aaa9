import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { type Period, period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { changeFlagLevels } from "@/lib/reports/flag-levels";
import { measureComparing } from "@/lib/reports/measure-comparing";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { viewerAs } from "../store/comparing/viewers";
import { insertFacts } from "./fact-rows";

// Expected values: worked by hand from the canals written here.

const reach = holderReach().figures;
const quarter = period("2026-Q3") as Period;

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const codes = ["C1", "C2", "C3", "C4", "C5", "X"];
  await insertFacts(
    pool(),
    codes.flatMap((code) =>
      Array.from({ length: 60 }, (_, place) => ({
        ...{ practice: "NORTH", code, day: "2026-08-03", patient: `${code} ${place}`, volume: 9 },
        tooth: place < 30 ? "11" : "46",
        separations: place % 30 < (code === "X" ? 6 : 1) ? 1 : 0,
      })),
    ),
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const compared = async (measure: string) =>
  measureComparing(
    reach,
    { measure },
    quarter,
    { period: quarter.name },
    await figures(reach, {
      measures: [measure],
      periods: [quarter],
      by: ["group", "practice", "clinician", "chair"],
    }),
  );

test("the one who differs is flagged, the others are told what could have been seen", async () => {
  const found = await compared("separation-per-canal");
  // X 12 of 60, the others 2 of 60 each: all shown 22 of 360.
  expect(found?.funnel.centre.value).toBeCloseTo(22 / 360, 12);
  expect(found?.funnel.points.map(({ label, flag }) => [label, flag !== null])).toEqual([
    ["C1, NORTH", false],
    ["C2, NORTH", false],
    ["C3, NORTH", false],
    ["C4, NORTH", false],
    ["C5, NORTH", false],
    ["X, NORTH", true],
  ]);
  expect(found?.chance.flags).toHaveLength(1);
  expect(found?.chance.quiet.count).toBe(5);
  expect(found?.chance.promise).toMatch(/^6 figures are compared/);
  expect(found?.funnel.points[5]?.href).toBe(
    "/lead/measures/separation-per-canal?period=2026-Q3&clinician=NORTH%2FX#records",
  );
});

test("separations of canals are standardised: fronts and molars 11 of 180 each, so 3.67 are expected of all", async () => {
  const mix = (await compared("separation-per-canal"))?.caseMix;
  expect(mix?.rows.map(({ observed, expected }) => [observed, expected])).toEqual([
    ...new Array(5).fill(["2", "3.67"]),
    ["12", "3.67"],
  ]);
  expect(mix?.cells).toHaveLength(2);
  expect((await compared("separation-per-visit"))?.caseMix).toBeNull();
});

test("flags follow the levels in force", async () => {
  const strict = { look: "0.1", lookFirst: "0.01", reason: "stricter" };
  const before = (await compared("separation-per-canal"))?.chance.promise;
  await changeFlagLevels(viewerAs("administrator"), strict);
  const after = (await compared("separation-per-canal"))?.chance.promise;
  expect(before).toMatch(/5 pages in 100 show a look/);
  expect(after).toMatch(/1 page in 1,000 show a look/);
});

test("medians and instruments are not compared so", async () => {
  expect(await compared("volume")).toBeNull();
  expect(await compared("separation-per-instrument")).toBeNull();
});
