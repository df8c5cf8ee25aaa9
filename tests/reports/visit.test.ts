import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Refused } from "@/lib/access/refused";
import type { Role } from "@/lib/access/role";
import type { Viewer } from "@/lib/access/viewer";
import { visitView } from "@/lib/reports/visit";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, delivery, use, visit } from "../store/bring-in";

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const patient = "0123456789abcdef0123456789abcdef";
  await bringIn({
    sessions: [
      { ...visit, patient },
      { ...visit, session_id: "V-2", clinician: "C02", patient },
    ],
    canals: [
      { ...canal, timer_reset: "no" },
      { ...canal, canal: "P", clinician: "C09", working_length_mm: 20.5, length_method: "both" },
    ],
    irrigation: [
      delivery,
      { ...delivery, seq: 2, irrigant: "edta", duration_s: 30, dwell_s: 60 },
      { ...delivery, seq: 3, duration_s: undefined },
      { ...delivery, canal: "P" },
    ],
    instruments: [{ ...use, separated: 1, third: "apical", patient_told: true }],
    steps: [
      { session_id: "V-1", canal: "", step: "dam", status: "excepted", reason: "not-possible" },
    ],
  });
  await bringIn({
    canals: [{ ...canal, timer_reset: "no" }],
    irrigation: [{ ...delivery, volume_ml: 9 }],
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const viewer = (
  role: Role,
  practice: string | null = null,
  clinicianKey: string | null = null,
): Viewer => ({
  userId: "u",
  name: "n",
  email: "e",
  grants: [{ role, practice, clinicianKey }],
});
const lead = viewer("clinical-lead");

describe("who may see a visit", () => {
  it("is the lead of its practice and whoever worked on it, by the visit or by one canal", async () => {
    for (const who of [
      lead,
      viewer("clinical-lead", "OAK"),
      viewer("clinician", "OAK", "OAK/C01"),
      viewer("clinician", "OAK", "OAK/C09"),
    ]) {
      expect((await visitView(who, "OAK", "V-1"))?.sessionId).toBe("V-1");
    }
  });

  it("is nobody else, and a clinician does not learn whether a visit is there", async () => {
    const sentence = (who: Viewer, session: string) =>
      visitView(who, "OAK", session).catch((error: unknown) =>
        error instanceof Refused ? error.message : Promise.reject(error),
      );
    const own = viewer("clinician", "OAK", "OAK/C01");
    expect(await sentence(own, "V-2")).toMatch(/none of yours/);
    expect(await sentence(own, "V-99")).toBe(await sentence(own, "V-2"));
    expect(await sentence(viewer("clinical-lead", "ELM"), "V-1")).toMatch(/not yours to see/);
    for (const role of ["quality-officer", "record-keeper", "administrator"] as const) {
      expect(await sentence(viewer(role), "V-1")).toMatch(
        /for the clinical lead and for clinicians/,
      );
    }
  });

  it("is not there for a lead who asks for what nobody has", async () => {
    expect(await visitView(lead, "OAK", "V-99")).toBeNull();
  });
});

describe("what it shows", () => {
  it("shows the patient only as a short pseudonym", async () => {
    const view = JSON.stringify(await visitView(lead, "OAK", "V-1"));
    expect(view).toContain("01234567");
    expect(view).not.toContain("0123456789abcdef");
  });

  it("places deliveries in their order with unknown times open, and says that the clock is not known", async () => {
    const view = await visitView(lead, "OAK", "V-1");
    const lane = view?.timeLine.lanes.find((one) => one.canal === "MB1");
    // Computed by hand: 60 s, then 30 s of flow and 60 s of dwell, so the third begins at 150 s; it has neither time nor flow.
    expect(
      lane?.rows.map((row) => [
        row.stretches.map((one) => [one.kind, one.from, one.seconds]),
        row.at,
      ]),
    ).toEqual([
      [[], 0],
      [[["flow", 0, 60]], null],
      [
        [
          ["flow", 60, 30],
          ["dwell", 90, 60],
        ],
        null,
      ],
      [[], 150],
    ]);
    expect(view?.timeLine.byClock).toBe(false);
    expect(view?.timeLine.note).toMatch(/clock time is not/);
    expect(lane?.uses).toEqual([
      expect.objectContaining({
        separated: true,
        words: expect.stringContaining("separated, apical third"),
      }),
    ]);
  });

  it("says of each criterion what became of its units, with the evidence", async () => {
    const view = await visitView(lead, "OAK", "V-1");
    const known = ["isolation", "length-recorded", "timer-reset", "line-rinse"];
    const states = view?.criteria
      .filter(({ id }) => known.includes(id))
      .map((one) => [one.id, one.units.map((unit) => `${unit.unit}: ${unit.state}`)]);
    expect(states).toEqual([
      ["isolation", ["the visit: excepted: not possible"]],
      ["length-recorded", ["canal MB1: not met", "canal P: met"]],
      ["timer-reset", ["canal MB1: not met", "canal P: met"]],
      ["line-rinse", []],
    ]);
    expect(view?.criteria.length).toBe(20);
    expect(view?.criteria[1]?.units[0]?.why).toBe(
      "/explanations/length-recorded/OAK/visit/V-1?canal=MB1",
    );
    expect(view?.criteria[1]?.units[0]?.evidence).toBe(
      "working length: not recorded; how the length was found: not recorded",
    );
  });

  it("names the file and line of every row, where it was seen again, and the held rows", async () => {
    const view = await visitView(lead, "OAK", "V-1");
    const canals = view?.sources.find((group) => group.table === "canals");
    expect(canals?.rows[0]?.source).toEqual({ file: "canals.csv", line: 2 });
    expect(canals?.rows[0]?.again).toEqual([{ file: "canals.csv", line: 2 }]);
    expect(canals?.rows[1]?.again).toEqual([]);
    expect(view?.held).toHaveLength(1);
    expect(view?.held[0]).toMatchObject({
      table: "deliveries",
      source: { file: "irrigation.csv", line: 2 },
    });
    expect(view?.held[0]?.sentences.join(" ")).toMatch(/found "9"/);
  });
});
