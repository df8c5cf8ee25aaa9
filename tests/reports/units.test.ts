import { afterAll, beforeAll, expect, test } from "vitest";
import { leadReach } from "@/lib/access/reach";
import { quarter } from "@/lib/records/period";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { measureRecords } from "@/lib/reports/measure-records";
import { qualityCriterion } from "@/lib/reports/quality-criterion";
import { unitsExport, unitsPage } from "@/lib/reports/units";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";
import { measured } from "../views/measured";

// Expected values are worked by hand from the two visits below: the timer was reset in chair 1 and not in chair 2.

const lead = viewerAs("clinical-lead");
const timer = "criterion/timer-reset";
const asked = { period: "2026-Q3", practice: "OAK" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [visit, { ...visit, session_id: "V-2", chair: "OAK-2", patient: "hash-2" }],
    canals: [canal, { ...canal, session_id: "V-2", timer_reset: "no" }],
  });
  await pool().query(
    `insert into criterion_versions (practice, criterion, definition, in_force, "from", written_on, reason, by)
     values ('OAK', 'isolation', $1, false, '2026-07-01', '2026-07-01', 'x', 'x')`,
    [JSON.stringify(measured("criterion/isolation").criterion)],
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("an outcome that the units do not have is refused with those that they have", async () => {
  expect((await unitsPage(lead, timer, { ...asked, outcome: "not-met" })).lines).toHaveLength(1);
  for (const outcome of ["missed", "separated", ["met", "not-met"], "x".repeat(99)])
    await expect(unitsPage(lead, timer, { ...asked, outcome })).rejects.toThrow(
      "The outcomes are met, not-met, excepted, not-recorded, left-out; without one every unit is shown.",
    );
  await expect(unitsExport(lead, timer, { ...asked, outcome: "missed" })).rejects.toThrow(
    AskedWrongly,
  );
});

test("the file is named for the practice where there is one", async () => {
  expect((await unitsExport(lead, timer, asked)).name).toBe(
    "units-criterion-timer-reset-OAK-2026-Q3.csv",
  );
  expect((await unitsExport(lead, timer, { period: "2026-07-01..2026-07-31" })).name).toBe(
    "units-criterion-timer-reset-2026-07-01-to-2026-07-31.csv",
  );
});

test("the records behind a chair's figure are that chair's alone", async () => {
  const records = (chair?: string) =>
    measureRecords(leadReach(lead), measured(timer), quarter(2026, 3), { chair }, {}, []);
  expect((await records()).lines).toHaveLength(2);
  const { lines, chair } = await records("OAK-2");
  expect(lines.map(({ whose }) => whose)).toEqual(["C01, OAK-2"]);
  expect(chair).toEqual({ code: "OAK-2", all: `/lead/measures/${timer}#records` });
});

test("where a criterion was not in force the pages say so, and since when", async () => {
  const page = await unitsPage(lead, "criterion/isolation", asked);
  expect([page.lines, page.notInForce]).toEqual([
    [],
    "It was not in force in this period: it has been out of force since 1 Jul 2026.",
  ]);
  await expect(qualityCriterion(viewerAs("quality-officer"), "isolation", asked)).rejects.toThrow(
    /^Isolation by rubber dam, July to September 2026\. It was not in force/,
  );
});
