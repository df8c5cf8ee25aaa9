import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { holderReach, leadReach, narrowed, ownReach, qualityReach } from "@/lib/access/reach";
import { period } from "@/lib/records/period";
import {
  canalsInOrder,
  separationsInOrder,
  type Whose,
} from "@/lib/store/comparing/separations-in-order";
import { visitPatterns } from "@/lib/store/comparing/visit-patterns";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { type PlacedVisit, placeVisits } from "./placed-canals";
import { viewerAs } from "./viewers";

// Expected values: worked by hand from the visits written here.

const quarter = period("2026-Q3");
if (!quarter) throw new Error("no quarter");
const within = quarter;
const lead = holderReach().figures;
const all: Whose = { kind: "group", subject: "" };
const separated = { separations: 1 };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  // placeVisits names a visit by its number, so the sequence has to have begun.
  await pool().query("select nextval('sessions_id_seq')");
});
afterEach(async () => {
  await pool().query("truncate canal_facts, visit_facts, sessions");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const place = (...visits: PlacedVisit[]) => placeVisits(pool(), visits);

describe("separations in the order of treatment", () => {
  it("stand by start time, then visit, then canal; not by the order of arrival", async () => {
    await place(
      { at: "2026-07-03T09:00Z", canals: { p: separated, d: {} } },
      { at: "2026-07-02T09:00Z", canals: { main: {} } },
      { at: "2026-07-03T08:00Z", canals: { main: {} } },
      // At the same time as the first, written later.
      { at: "2026-07-03T09:00Z", canals: { b: separated } },
      { at: "2026-07-04T09:00Z", canals: { main: {} } },
    );
    // 2 Jul; 3 Jul 8:00; d and p; b; 4 Jul.
    expect(await separationsInOrder(lead, "canal", all, within)).toEqual({
      units: 6,
      first: "2026-07-02",
      last: "2026-07-04",
      events: [
        { place: 4, day: "2026-07-03" },
        { place: 5, day: "2026-07-03" },
      ],
    });
    expect(await separationsInOrder(lead, "visit", all, within)).toMatchObject({
      units: 5,
      events: [{ place: 3 }, { place: 4 }],
    });
  });

  it("leave out canals whose outcome is not known, and keep those where a separation is", async () => {
    await place({
      at: "2026-07-03T09:00Z",
      canals: {
        a: { unknown: 1 },
        b: { held: 1 },
        c: { uses: 0 },
        d: { uses: 2, unknown: 1, separations: 1 },
        e: { uses: 0, held: 1, separations: 1 },
        f: {},
      },
    });
    const found = await separationsInOrder(lead, "canal", all, within);
    expect([found.units, found.events.map((event) => event.place)]).toEqual([3, [1, 2]]);
  });

  it("are of the period, half-open", async () => {
    for (const at of ["2026-06-30", "2026-07-01", "2026-09-30", "2026-10-01"])
      await place({ at: `${at}T09:00Z`, canals: { main: separated } });
    const found = await separationsInOrder(lead, "canal", all, within);
    expect(found.events.map(({ day }) => day)).toEqual(["2026-07-01", "2026-09-30"]);
  });

  it("are nothing where nothing is", async () => {
    const none = { units: 0, first: null, last: null, events: [] };
    expect(await separationsInOrder(lead, "canal", all, within)).toEqual(none);
  });
});

describe("whose they are", () => {
  const three = () =>
    place(
      { at: "2026-07-01T09:00Z", canals: { main: {} } },
      { at: "2026-07-02T09:00Z", code: "B2", canals: { main: separated } },
      { at: "2026-07-03T09:00Z", practice: "SOUTH", code: "S1", canals: { main: separated } },
    );
  const unitsOf = async (reach: Parameters<typeof separationsInOrder>[0], whose: Whose) =>
    (await separationsInOrder(reach, "canal", whose, within)).units;

  it("follows what is asked within the reach", async () => {
    await three();
    const south = leadReach(viewerAs("clinical-lead", "SOUTH"));
    expect(await unitsOf(lead, all)).toBe(3);
    expect(await unitsOf(lead, { kind: "practice", subject: "NORTH" })).toBe(2);
    expect(await unitsOf(lead, { kind: "clinician", subject: "NORTH/B2" })).toBe(1);
    expect(await unitsOf(south, all)).toBe(1);
    expect(await unitsOf(south, { kind: "practice", subject: "NORTH" })).toBe(0);
    expect(await unitsOf(narrowed(lead, "NORTH"), { kind: "clinician", subject: "SOUTH/S1" })).toBe(
      0,
    );
  });

  it("is oneself alone by a reach of one's own, whatever is asked", async () => {
    await three();
    const own = ownReach(viewerAs("clinician", "NORTH", "NORTH/A1"));
    for (const whose of [
      all,
      { kind: "practice", subject: "SOUTH" },
      { kind: "clinician", subject: "NORTH/B2" },
    ] as const) {
      const found = await separationsInOrder(own, "canal", whose, within);
      expect([found.units, found.events]).toEqual([1, []]);
    }
    const canals = await canalsInOrder(own, "NORTH/B2", within);
    expect(canals.map(({ day }) => day)).toEqual(["2026-07-01"]);
  });

  it("is refused of a clinician by a reach that tells none apart", async () => {
    await three();
    const officer = qualityReach(viewerAs("quality-officer"));
    expect(await unitsOf(officer, all)).toBe(3);
    const whose = { kind: "clinician", subject: "NORTH/A1" } as const;
    await expect(unitsOf(officer, whose)).rejects.toThrow(RangeError);
    await expect(canalsInOrder(officer, "NORTH/A1", within)).rejects.toThrow(RangeError);
  });
});

describe("a clinician's canals one by one", () => {
  it("carry their day, visit, case and outcome, unknown ones left out", async () => {
    await place(
      {
        at: "2026-07-02T09:00Z",
        canals: {
          mb: { tooth: "46", curvature: 30, separations: 1 },
          dl: { tooth: "46", unknown: 1 },
        },
      },
      { at: "2026-07-01T09:00Z", canals: { main: { curvature: 9.9 } } },
      { at: "2026-07-01T09:00Z", code: "B2", canals: { main: separated } },
    );
    const found = await canalsInOrder(lead, "NORTH/A1", within);
    expect(found).toMatchObject([
      {
        day: "2026-07-01",
        practice: "NORTH",
        canal: "main",
        case: "front/slight/primary",
        event: false,
      },
      {
        day: "2026-07-02",
        practice: "NORTH",
        canal: "mb",
        case: "molar/severe/primary",
        event: true,
      },
    ]);
    expect(new Set(found.map(({ sessionId }) => sessionId)).size).toBe(2);
  });
});

describe("visits as patterns", () => {
  const molar = { tooth: "46" };

  it("gather visits that are alike in cases and outcomes, whoever's they are and in whatever order", async () => {
    await place(
      { at: "2026-07-01T09:00Z", canals: { a: molar, b: {} } },
      { at: "2026-07-02T09:00Z", code: "B2", canals: { a: {}, b: molar } },
      { at: "2026-07-03T09:00Z", canals: { a: { ...molar, ...separated }, b: {} } },
      { at: "2026-07-04T09:00Z", canals: { a: { unknown: 1 }, b: {} } },
    );
    const front = { case: "front//primary", event: false };
    expect(await visitPatterns(lead, within)).toEqual([
      { visits: 1, canals: [front] },
      { visits: 2, canals: [front, { case: "molar//primary", event: false }] },
      { visits: 1, canals: [front, { case: "molar//primary", event: true }] },
    ]);
  });

  it("are of the reach's practices alone", async () => {
    await place(
      { at: "2026-07-01T09:00Z", canals: { a: {} } },
      { at: "2026-07-01T09:00Z", practice: "SOUTH", canals: { a: separated } },
    );
    const south = await visitPatterns(leadReach(viewerAs("clinical-lead", "SOUTH")), within);
    expect(south).toEqual([{ visits: 1, canals: [{ case: "front//primary", event: true }] }]);
  });

  it("are given to a clinician only where five others with ten canals stand behind them, none with over half", async () => {
    const ten = Object.fromEntries(Array.from({ length: 10 }, (_, at) => [`c${at}`, {}]));
    const own = ownReach(viewerAs("clinician", "NORTH", "NORTH/A1"));
    const at = "2026-07-01T09:00Z";
    const visits = async () =>
      (await visitPatterns(own, within)).reduce((sum, one) => sum + one.visits, 0);
    await place({ at, canals: ten }, { at, practice: "SOUTH", code: "S1", canals: ten });
    for (const code of ["B2", "B3", "B4", "B5"]) await place({ at, code, canals: ten });
    expect(await visits()).toBe(0);
    // The fifth other: now their own visit and five more, none of the other practice.
    await place({ at, code: "B6", canals: ten });
    expect(await visits()).toBe(6);
    // One other with 50 of 90 canals.
    for (let more = 0; more < 4; more += 1) await place({ at, code: "B6", canals: ten });
    expect(await visits()).toBe(0);
  });
});
