import { afterAll, beforeAll, expect, test } from "vitest";
import {
  type FiguresReach,
  holderReach,
  leadReach,
  narrowed,
  qualityReach,
} from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { medianEnds } from "@/lib/audit/median-ends";
import { quarter } from "@/lib/records/period";
import { disconnect, prisma } from "@/lib/store/database";
import { basisShares } from "@/lib/store/figures/basis-shares";
import { tallies } from "@/lib/store/figures/tallies";
import { unitList } from "@/lib/store/figures/unit-list";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { disagreeingCanals } from "@/lib/store/quality/disagreeing-canals";
import { heldCount } from "@/lib/store/quality/held-count";
import { weeklyVisits } from "@/lib/store/quality/weekly-visits";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, delivery, use, visit } from "../bring-in";

// Expected counts: computed by hand from the rows below.
const period = quarter(2026, 3);
const whole = holderReach().figures;
const lead = (practice: string): Viewer => ({
  userId: "u",
  name: "Lead",
  email: "lead@example.org",
  grants: [{ role: "clinical-lead", practice, clinicianKey: null }],
});
const page = { period, limit: 10, offset: 0 };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [
      visit,
      {
        ...visit,
        session_id: "V-2",
        practice: "ELM",
        chair: "ELM-1",
        clinician: "C09",
        started_at: "2026-07-14T08:10:00.000Z",
        ended_at: "2026-07-14T09:00:00.000Z",
      },
    ],
    canals: [
      canal,
      { ...canal, canal: "DB" },
      { ...canal, canal: "P", preparation: "none" },
      { ...canal, session_id: "V-2", preparation: "hand" },
    ],
    // 4.5 mL in 60 s at 9 mL/min is half of what flow times time gives: over a tenth apart.
    irrigation: [
      { ...delivery, flow_ml_min: 9, basis: "noted" },
      { ...delivery, session_id: "V-2", volume_ml: 8 },
    ],
    instruments: [use, { ...use, canal: "DB", instrument_id: "i-2", separated: 1 }],
    steps: [{ session_id: "V-1", step: "dam", status: "done" }],
  });
  await prisma().chair.create({ data: { practice: "OAK", code: "OAK-2" } });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("every unit behind a continuous measure is in one state, and the states add up", async () => {
  const { units, all } = await unitList(narrowed(whole, "OAK"), { ...page, measure: "volume" });
  expect(all).toBe(3);
  expect(
    units.map(({ canal: name, state, reason, value }) => [name, state, reason, value]),
  ).toEqual([
    ["DB", "not-recorded", null, null],
    ["MB1", "recorded", null, 4.5],
    ["P", "left-out", "not-prepared", null],
  ]);
});

test("units can be narrowed to an outcome and a clinician", async () => {
  const separated = await unitList(whole, {
    ...page,
    measure: "separation-per-canal",
    state: "separated",
  });
  expect(separated.units.map((unit) => [unit.sessionId, unit.canal])).toEqual([["V-1", "DB"]]);
  const theirs = await unitList(whole, { ...page, measure: "volume", clinician: "ELM/C09" });
  expect(theirs.units.map((unit) => unit.sessionId)).toEqual(["V-2"]);
});

test("the units behind a criterion are its outcomes", async () => {
  const { units } = await unitList(whole, { ...page, measure: "criterion/isolation" });
  expect(units.map((unit) => [unit.sessionId, unit.state])).toEqual([
    ["V-2", "not-recorded"],
    ["V-1", "met"],
  ]);
});

test("a page holds no more than was asked for and still tells how many there are", async () => {
  const { units, all } = await unitList(whole, {
    period,
    limit: 1,
    offset: 1,
    measure: "criterion/isolation",
  });
  expect([units.length, units[0]?.sessionId, all]).toEqual([1, "V-1", 2]);
});

test("strata split a measure by preparation and delivery, and lose no unit", async () => {
  const found = await tallies(whole, {
    measures: ["volume"],
    periods: [period],
    by: ["group"],
    ends: medianEnds(0.95),
    strata: "technique",
  });
  expect(
    found.map((tally) => [
      tally.stratum?.by === "technique" && tally.stratum.preparation,
      tally.stratum?.by === "technique" && tally.stratum.delivery,
      tally.kind === "median" && [tally.n, tally.median],
    ]),
  ).toEqual([
    ["hand", "syringe", [1, 8]],
    ["none", null, [0, null]],
    ["rotary", null, [0, null]],
    ["rotary", "syringe", [1, 4.5]],
  ]);
  expect(found.every((tally) => tally.measure === "volume")).toBe(true);
});

test("shares by basis count the canals of the treatment population", async () => {
  expect(await basisShares(whole, period)).toEqual([
    { basis: null, canals: 2, clinicians: 2 },
    { basis: "noted", canals: 1, clinicians: 1 },
  ]);
});

test("every chair is in the weeks, also one without a visit", async () => {
  expect(await weeklyVisits(narrowed(whole, "OAK"), period)).toEqual([
    { practice: "OAK", chair: "OAK-1", monday: "2026-06-29", visits: 1 },
    { practice: "OAK", chair: "OAK-2", monday: null, visits: 0 },
  ]);
});

test("a canal whose volume, flow and time disagree is listed", async () => {
  const found = await disagreeingCanals(whole, period, 10);
  expect(found.map((one) => [one.sessionId, one.canal, one.all])).toEqual([["V-1", "MB1", 1]]);
});

test("a lead of one practice reads nothing of another's", async () => {
  await prisma().held.createMany({
    data: [
      {
        tableName: "sessions",
        digest: "a",
        kind: "check",
        practice: "OAK",
        key: "x",
        raw: {},
        reasons: [],
        fileId: 1,
        line: 1,
      },
      {
        tableName: "irrigation",
        digest: "b",
        kind: "check",
        sessionId: "V-2",
        key: "y",
        raw: {},
        reasons: [],
        fileId: 1,
        line: 2,
      },
      {
        tableName: "irrigation",
        digest: "c",
        kind: "check",
        key: "z",
        raw: {},
        reasons: [],
        fileId: 1,
        line: 3,
      },
    ],
  });
  const elm: FiguresReach = leadReach(lead("ELM"));
  expect(await heldCount(elm)).toEqual([{ table: "irrigation", rows: 1 }]);
  expect(await heldCount(whole)).toEqual([
    { table: "irrigation", rows: 2 },
    { table: "sessions", rows: 1 },
  ]);
  expect((await unitList(elm, { ...page, measure: "volume", clinician: "OAK/C01" })).all).toBe(0);
  expect((await weeklyVisits(elm, period)).map((row) => row.practice)).toEqual(["ELM"]);
  expect(await disagreeingCanals(elm, period, 10)).toEqual([]);
  expect((await basisShares(elm, period)).map((row) => row.canals)).toEqual([1]);
});

test("a reach that does not tell clinicians apart lists units without them, whoever is asked for", async () => {
  const officer: Viewer = {
    ...lead("OAK"),
    grants: [{ role: "quality-officer", practice: null, clinicianKey: null }],
  };
  const { units, all } = await unitList(qualityReach(officer), {
    ...page,
    measure: "volume",
    clinician: "OAK/C01",
  });
  expect(all).toBe((await unitList(holderReach().figures, { ...page, measure: "volume" })).all);
  expect(units.map(({ clinician }) => clinician)).toEqual(units.map(() => null));
});
