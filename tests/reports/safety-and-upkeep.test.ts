import { createHash } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { qualityReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { safetyPage } from "@/lib/reports/safety-page";
import { upkeepExport, upkeepPage } from "@/lib/reports/upkeep-page";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { exportsBefore } from "@/lib/store/quality/exports";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, delivery, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";

// Expected values are worked by hand from the rows below and the project's own rules of who may see what.

const lead = viewerAs("clinical-lead");
const officer = viewerAs("quality-officer");
const ofElm = viewerAs("quality-officer", "ELM");
const one = viewerAs("clinician", "OAK", "OAK/C01");
const two = viewerAs("clinician", "OAK", "OAK/C02");
const asked = { period: "2026-Q3" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [visit, { ...visit, session_id: "V-2", clinician: "C02", patient: "hash-2" }],
    canals: [canal, { ...canal, session_id: "V-2" }],
    irrigation: [
      { ...delivery, delivery: "continuous" },
      { ...delivery, seq: 2, irrigant: "chx" },
    ],
    incidents: [
      { session_id: "V-1", kind: "extrusion", patient_told: true, reported: false },
      { session_id: "V-2", kind: "allergy", patient_told: true, reported: true },
    ],
    upkeep: ["line-rinse", "own-suction", "desk"].map((task) => ({
      ...{ practice: "OAK", chair: "OAK-1", device: "", day: "2026-07-03", task },
      ...{ status: "done", duration_s: 45, done_by: "N-77" },
    })),
  });
  await pool().query(
    `insert into own_terms (practice, kind, code, words, by, at, retired) values
       ('OAK', 'task', 'own-suction', 'Suction filter', 'x', '2026-07-01', true),
       ('OAK', 'task', 'own-motor', 'Motor oiled', 'x', '2026-07-04 23:30+00', false),
       ('OAK', 'task', 'own-gone', 'Gone', 'x', '2026-07-01', true)`,
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

describe("safety", () => {
  const whats = async (viewer: Viewer, more: Record<string, string> = {}) =>
    (await safetyPage(viewer, { ...asked, ...more })).items?.lines.map(({ what }) => what).sort();

  it("shows the lead each with its visit, and a clinician their own", async () => {
    expect(await whats(lead)).toEqual([
      "allergy",
      "extrusion",
      "hypochlorite next to chlorhexidine",
    ]);
    expect(await whats(one)).toEqual(["extrusion", "hypochlorite next to chlorhexidine"]);
    expect(await whats(two)).toEqual(["allergy"]);
    expect(await whats(lead, { open: "yes" })).toEqual(["extrusion"]);
    expect(await whats(lead, { kind: "contact" })).toHaveLength(1);
    expect(await whats(lead, { clinician: "OAK/C02" })).toEqual(["allergy"]);
    expect(await whats(two, { clinician: "OAK/C01" })).toEqual(["allergy"]);
    expect(await whats(lead, { kind: "x", page: "-1", clinician: "\0" })).toHaveLength(3);
  });

  it("gives the quality officer counts, days and what is open, without visits or clinicians", async () => {
    const page = await safetyPage(officer, asked);
    expect(page.items).toBeNull();
    expect(page.counts.map((line) => [line.what, line.events, line.days, line.open])).toEqual([
      ["hypochlorite next to chlorhexidine", "1", "3 Jul 2026", ""],
      ["allergy", "1", "3 Jul 2026", ""],
      ["extrusion", "1", "3 Jul 2026", "not reported 1"],
    ]);
    for (const hidden of ["V-1", "V-2", "C01", "C02", "hash-"])
      expect(JSON.stringify(page)).not.toContain(hidden);
    expect((await safetyPage(ofElm, asked)).counts).toEqual([]);
  });

  it("is refused of other roles, and a period that is none is said", async () => {
    for (const role of ["record-keeper", "administrator"] as const)
      await expect(safetyPage(viewerAs(role), asked)).rejects.toThrow(Refused);
    await expect(safetyPage(one, { period: "soon" })).rejects.toThrow(AskedWrongly);
    await expect(safetyPage(ofElm, { practice: "OAK" })).rejects.toThrow(AskedWrongly);
  });
});

describe("upkeep", () => {
  it("offers the tasks in use and those of the records, in the practice's words", async () => {
    const page = await upkeepPage(officer, asked);
    expect(page.tasks.map(({ words }) => words)).toEqual([
      ...["Line rinse", "Line dry", "Desk", "Motor oiled", "Suction filter"],
    ]);
    expect(page.finding).toBe("Line rinse. 1 day in use: 1 rinsed 30 s or longer.");
    const dry = await upkeepPage(lead, { ...asked, task: "line-dry", chair: "OAK-1" });
    expect(dry.finding).toBe("Line dry. 1 day in use: 1 no record.");
    expect(dry.file).toBe("/api/quality/upkeep?period=2026-Q3&chair=OAK-1");
  });

  it("says what there is not, and is refused of other roles", async () => {
    for (const wrong of [{ task: "own-gone" }, { chair: "OAK-9" }, { practice: "ELM" }])
      await expect(upkeepPage(officer, { ...asked, ...wrong })).rejects.toThrow(AskedWrongly);
    for (const role of ["clinician", "record-keeper", "administrator"] as const)
      await expect(upkeepPage(viewerAs(role, "OAK", "OAK/C01"), asked)).rejects.toThrow(Refused);
    const elm = await upkeepPage(ofElm, asked);
    expect([elm.finding, elm.calendar.chairs]).toEqual(["Line rinse. No day in use.", []]);
  });

  it("leaves the house as a file that names nobody, and that is kept", async () => {
    const { name, text } = await upkeepExport(officer, { ...asked, chair: "OAK-1" });
    expect(name).toBe("upkeep-2026-Q3-OAK-1.csv");
    expect(text).toContain(
      "OAK,OAK-1,2026-07-03,yes,line-rinse,,done,45,rinsed 30 s or longer\r\n",
    );
    expect(text).toContain("OAK,OAK-1,2026-07-03,yes,line-dry,,,,no record\r\n");
    for (const hidden of ["N-77", "C01", "hash-"]) expect(text).not.toContain(hidden);
    const [kept] = await exportsBefore(qualityReach(officer), 1);
    const sha256 = createHash("sha256").update(text, "utf8").digest("hex");
    expect(kept).toMatchObject({ what: "upkeep calendar", period: "2026-Q3", sha256 });
  });
});
