import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { clinicianQuarter } from "@/lib/reports/clinician-quarter";
import { keepNote } from "@/lib/reports/own-note";
import { disconnect, pool, prisma } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, delivery, use, visit } from "../store/bring-in";

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await prisma().user.createMany({
    data: ["u1", "u2"].map((id) => ({
      id,
      name: id,
      email: `${id}@example.org`,
      emailVerified: false,
    })),
  });
});
afterEach(async () => {
  await pool().query(
    "truncate sessions, canals, irrigation, instruments, steps, exceptions, canal_facts, visit_facts, held, witnesses, notes cascade",
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const clinician = (clinicianKey: string, userId = "u1"): Viewer => ({
  userId,
  name: "n",
  email: "e",
  grants: [{ role: "clinician", practice: "OAK", clinicianKey }],
});
const mine = clinician("OAK/C01");

/** Visits with one canal, one delivery and one use each; `more` changes their canals. */
function visits(
  code: string,
  count: number,
  day: string,
  more: { volume?: number; spread?: number; timer?: string; separated?: number } = {},
) {
  const ids = Array.from({ length: count }, (_, place) => `${code}-${day}-${place}`);
  return {
    sessions: ids.map((session_id) => ({
      ...visit,
      session_id,
      clinician: code,
      // One patient throughout, as bring-in has it, unless values are spread.
      ...(more.spread ? { patient: `hash ${session_id}` } : {}),
      started_at: `${day}T08:00:00.000Z`,
      ended_at: undefined,
    })),
    canals: ids.map((session_id) => ({ ...canal, session_id, timer_reset: more.timer ?? "yes" })),
    irrigation: ids.map((session_id, place) => ({
      ...delivery,
      session_id,
      volume_ml: (more.volume ?? 4.5) + (place % 5) * (more.spread ?? 0),
    })),
    instruments: ids.map((session_id) => ({
      ...use,
      session_id,
      instrument_id: undefined,
      separated: more.separated ?? 0,
    })),
  };
}

describe("the clinician's quarter", () => {
  it("puts measures with too few units first, with the records worth a look", async () => {
    await bringIn(visits("C01", 9, "2026-08-03", { separated: 1 }));
    const view = await clinicianQuarter(mine, {});
    expect(view.period.name).toBe("2026-Q3");
    expect(view.tooFew.map((one) => one.title)).toContain("Irrigant volume per canal");
    expect(view.tooFew[0]?.words).toMatch(/9 recorded canals .* too few to tell/);
    expect(view.look.lines).toHaveLength(9);
    expect(view.look.lines[0]?.why).toBe("an instrument separated");
  });

  it("opens rates with fewer than 60 units on four quarters and says so, and those with 60 on the quarter", async () => {
    await bringIn(visits("C01", 59, "2026-08-03"));
    await bringIn(visits("C01", 10, "2025-10-01"));
    await bringIn(visits("C01", 10, "2025-09-30"));
    const few = (await clinicianQuarter(mine, {})).main.find(
      (one) => one.measure === "separation-per-use",
    );
    expect(few?.counts).toMatch(/^0 of 69;/);
    expect(few?.notes[0]).toBe(
      "Only 59 uses in July to September 2026, so four quarters are shown together: 1 Oct 2025 to 30 Sep 2026.",
    );
    await bringIn(visits("C01", 1, "2026-09-30"));
    const enough = (await clinicianQuarter(mine, {})).main.find(
      (one) => one.measure === "separation-per-use",
    );
    expect(enough?.counts).toMatch(/^0 of 60;/);
    // 0 of 60: Clopper–Pearson's upper end is 5.963 %, the design's check value (computed).
    expect(enough?.finding).toBe(
      "None in your 60 uses. That is not a rate of 0 %: anything up to 5.96 % fits these records.",
    );
    expect(enough?.estimate).toBe("none in 60");
  });

  it("lists the units that missed a criterion a page at a time, each leading to its visit", async () => {
    await bringIn(visits("C01", 12, "2026-08-03", { timer: "no" }));
    const first = (await clinicianQuarter(mine, {})).criteria.find(
      (one) => one.id === "timer-reset",
    );
    expect([first?.page, first?.pages, first?.misses.length]).toEqual([1, 2, 10]);
    expect(first?.misses[0]).toMatchObject({
      mark: "missed",
      evidence: "timer started afresh: no",
    });
    expect(first?.misses[0]?.href).toMatch(/^\/visits\/OAK\/C01-2026-08-03-\d+$/);
    const second = (await clinicianQuarter(mine, { missed: "timer-reset", at: "2" })).criteria.find(
      (one) => one.id === "timer-reset",
    );
    expect([second?.page, second?.misses.length]).toEqual([2, 2]);
    expect(first?.whatToDo.join(" ")).toMatch(/enter the exception/);
  });

  it("counts every own unit once in the spread and names nobody else", async () => {
    await bringIn(visits("C01", 20, "2026-08-03", { volume: 5, spread: 0.25 }));
    for (const code of ["C02", "C03", "C04", "C05", "C06"])
      await bringIn(visits(code, 10, "2026-08-04", { volume: 7, spread: 0.25 }));
    const view = await clinicianQuarter(mine, {});
    const volume = view.main.find((one) => one.measure === "volume");
    expect(volume?.spread?.bins.reduce((total, bin) => total + bin.units, 0)).toBe(20);
    expect(volume?.spread?.reference).toEqual({ value: 7.5, words: "practice 7.5 mL" });
    // Medians 5.5 and 7.5; Woodruff's ends by hand a step of .25 to either side of both: −2 ± √(2 × .25²).
    expect(volume?.comparison).toBe(
      "The practice's median without you is 7.5 mL (50 recorded canals); yours is 2.0 mL less, and the difference could be anything from 1.6 mL to 2.4 mL less (95 % interval), which lies outside what chance alone easily gives: worth a look at records, cases and equipment before anything else.",
    );
    expect(volume?.read).toMatch(
      /^Read 5\.3 mL to 5\.8 mL, which allows for canals of one patient/,
    );
    expect(view.summary[0]).toMatchObject({ id: "difference volume", look: true });
    expect(JSON.stringify(view)).not.toMatch(/C0[2-6]/);
  });

  it("says which comparison it is where too few others stand behind one", async () => {
    await bringIn(visits("C01", 20, "2026-08-03"));
    const alone = (await clinicianQuarter(mine, {})).main.find((one) => one.measure === "volume");
    expect(alone?.comparison).toMatch(
      /^There is nothing to compare it with\. Fewer than 5 other clinicians/,
    );
    await bringIn(visits("C01", 20, "2026-05-04", { volume: 6 }));
    const own = (await clinicianQuarter(mine, {})).main.find((one) => one.measure === "volume");
    expect(own?.comparison).toMatch(
      /it is with yourself: your own median of the four quarters before is 6\.0 mL/,
    );
  });

  it("shows two years of each measure in the chart of its kind, its own alone", async () => {
    for (const day of ["2025-03-03", "2025-10-01", "2026-08-03"])
      await bringIn(visits("C01", 12, day, { volume: 5 }));
    // One separation in three months: rarer than two a month.
    await bringIn(visits("C01", 1, "2025-10-02", { volume: 5, separated: 1 }));
    await bringIn(visits("C02", 12, "2026-07-01", { volume: 9 }));
    const { months } = await clinicianQuarter(mine, {});
    const volume = months.find((one) => one.measure === "volume")?.chart;
    expect(volume?.rows).toHaveLength(24);
    expect(
      volume?.rows.filter((row) => row.value !== null).map((row) => [row.id, row.value]),
    ).toEqual([
      ["2025-03", 5],
      ["2025-10", 5],
      ["2026-08", 5],
    ]);
    const separations = months.find((one) => one.measure === "separation-per-canal")?.chart;
    expect(separations?.kind).toMatch(/^g chart: how many canals lie between one separation/);
    // A criterion only where its target was not reached: every one would be a wall of charts.
    const criteria = months.filter((one) => one.measure.startsWith("criterion/"));
    expect(criteria.map((one) => one.measure)).toContain("criterion/length-recorded");
    expect(criteria.length).toBeLessThan(10);
    expect(JSON.stringify(months)).not.toMatch(/promises of flags/);
  });

  it("is empty where the period has no visit of theirs, and refuses who is no clinician and what is no period", async () => {
    await bringIn(visits("C01", 3, "2026-08-03"));
    expect((await clinicianQuarter(mine, { period: "2025-Q1" })).empty).toBe(true);
    await expect(clinicianQuarter(mine, { period: "summer" })).rejects.toThrow(AskedWrongly);
    await expect(
      clinicianQuarter(
        { ...mine, grants: [{ role: "clinical-lead", practice: null, clinicianKey: null }] },
        {},
      ),
    ).rejects.toThrow(Refused);
  });
});

describe("the private note", () => {
  it("is kept for its writer alone, and taken away when emptied", async () => {
    await bringIn(visits("C01", 1, "2026-08-03"));
    expect(await keepNote(mine, { quarter: "2026-Q3", text: "  Ask about flow. " })).toEqual({
      done: "The note is kept.",
    });
    expect((await clinicianQuarter(mine, {})).note.text).toBe("Ask about flow.");
    expect((await clinicianQuarter(clinician("OAK/C01", "u2"), {})).note.text).toBe("");
    await keepNote(mine, { quarter: "2026-Q3", text: " " });
    expect((await clinicianQuarter(mine, {})).note.text).toBe("");
  });

  it("is refused to who is no clinician, and when it is too long or belongs to no quarter", async () => {
    expect(await keepNote(mine, { quarter: "2026-Q3", text: "x".repeat(4001) })).toHaveProperty(
      "wrong",
    );
    expect(await keepNote(mine, { quarter: "2026", text: "x" })).toHaveProperty("wrong");
    await expect(
      keepNote({ ...mine, grants: [] }, { quarter: "2026-Q3", text: "x" }),
    ).rejects.toThrow(Refused);
  });
});
