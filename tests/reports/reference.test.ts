import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { holderReach, narrowed, ownReach, qualityReach } from "@/lib/access/reach";
import type { Comparison } from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import { period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { withReferences } from "@/lib/reports/reference";
import { clopperPearson, wilson } from "@/lib/statistics/proportion-interval";
import { medianInterval, quantile } from "@/lib/statistics/quantile";
import { disconnect, pool } from "@/lib/store/database";
import { others } from "@/lib/store/figures/others";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { type FactRow, insertFacts } from "./fact-rows";

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterEach(async () => {
  await pool().query("truncate canal_facts, visit_facts, people");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const quarter = period("2026-Q3");
const lead = holderReach().figures;
const viewer = (clinicianKey: string) => ({
  userId: "u",
  name: "n",
  email: "e",
  grants: [{ role: "clinician" as const, practice: null, clinicianKey }],
});

/** Canals of a clinician with volumes that differ from canal to canal and from clinician to clinician. */
function canals(code: string, count: number, more: Partial<FactRow> = {}): FactRow[] {
  return Array.from({ length: count }, (_, place) => ({
    practice: "NORTH",
    code,
    day: "2026-08-03",
    volume: ((place * 7 + code.charCodeAt(1) * 3) % 23) + code.charCodeAt(1) / 8,
    uses: 2,
    separations: place === 3 ? 1 : 0,
    timerReset: place % 5 === 0 ? "no" : "yes",
    ...more,
  }));
}

async function referenceOf(
  measure: string,
  worker = "NORTH/A1",
  reach: Parameters<typeof figures>[0] = lead,
): Promise<Comparison> {
  if (!quarter) throw new Error("no quarter");
  const found = await withReferences(
    reach,
    await figures(reach, { measures: [measure], periods: [quarter], by: ["clinician"] }),
  );
  const own = found.find(
    (figure: Figure) => figure.about.kind === "clinician" && figure.about.key === worker,
  );
  if (!own?.reference) throw new Error(`no reference of ${worker}`);
  return own.reference as Comparison;
}

const five = ["B2", "B3", "B4", "B5", "B6"];
const volumes = (rows: readonly FactRow[]) =>
  rows.flatMap((row) => (row.volume === null || row.volume === undefined ? [] : [row.volume]));

describe("the practice without the clinician", () => {
  // Expected values: computed from the same rows by the plain functions of lib/statistics, which are held to published values.
  it("is the median, quartiles and interval of the others' units", async () => {
    const rest = five.flatMap((code, place) => canals(code, 10 + place));
    const unseen = [
      ...canals("Z9", 30, { practice: "SOUTH", volume: 900 }),
      ...canals("G7", 4, { volume: null }),
      ...canals("H8", 20, { exclusion: "abandoned", volume: 500 }),
      ...canals("K2", 20, { day: "2026-10-01", volume: 700 }),
    ];
    const few = canals("L3", 3);
    await insertFacts(pool(), [...canals("A1", 40, { volume: 300 }), ...rest, ...few, ...unseen]);
    const expected = volumes([...rest, ...few]);
    const interval = medianInterval(expected, 0.95);
    for (const reach of [lead, ownReach(viewer("NORTH/A1")), narrowed(lead, "NORTH")]) {
      const found = await referenceOf("volume", "NORTH/A1", reach);
      expect(found.kind).toBe("practice");
      expect(found.what).toBe("practice NORTH without this clinician");
      expect(found.n).toBe(expected.length);
      expect(found.estimate).toBeCloseTo(quantile(expected, 0.5) ?? Number.NaN, 9);
      expect(found.quartiles?.[0]).toBeCloseTo(quantile(expected, 0.25) ?? Number.NaN, 9);
      expect(found.quartiles?.[1]).toBeCloseTo(quantile(expected, 0.75) ?? Number.NaN, 9);
      expect(found.interval).toMatchObject({ lower: interval?.lower, upper: interval?.upper });
    }
  });

  it("is the pooled rate of a separation and of a criterion, each with its interval", async () => {
    const rest = five.flatMap((code) => canals(code, 12));
    await insertFacts(pool(), [...canals("A1", 12, { separations: 1, timerReset: "no" }), ...rest]);
    // 5 others × 12 canals of 2 uses, one separation each: 5 of 120 uses and 5 of 60 canals; 3 of 12 timers not reset.
    const perUse = await referenceOf("separation-per-use");
    expect([perUse.n, perUse.estimate]).toEqual([120, 5 / 120]);
    expect(perUse.interval).toMatchObject(clopperPearson(5, 120, 0.95) ?? {});
    expect((await referenceOf("separation-per-canal")).estimate).toBe(5 / 60);
    const reset = await referenceOf("criterion/timer-reset");
    expect([reset.n, reset.estimate]).toEqual([60, 45 / 60]);
    expect(reset.interval).toMatchObject(wilson(45, 60, 0.95) ?? {});
  });

  it("follows the clinician to every practice they worked in, and leaves their own out in all", async () => {
    const both = [
      ...canals("A1", 10, { worker: "person:x", volume: 99 }),
      ...canals("Q1", 10, { practice: "SOUTH", worker: "person:x", volume: 99 }),
    ];
    const rest = [
      ...five.flatMap((code) => canals(code, 10)),
      ...canals("S1", 10, { practice: "SOUTH" }),
    ];
    await insertFacts(pool(), [...both, ...rest]);
    const found = await referenceOf("volume", "person:x");
    expect([found.kind, found.n]).toEqual(["practice", 60]);
    expect(found.estimate).toBeCloseTo(quantile(volumes(rest), 0.5) ?? Number.NaN, 9);
    const inNorth = await referenceOf("volume", "person:x", narrowed(lead, "NORTH"));
    expect(inNorth.n).toBe(50);
  });
});

describe("what it falls back on", () => {
  it("takes the group's others of the same peer group when the practice has only four with ten units", async () => {
    const north = five.flatMap((code, place) => canals(code, place === 0 ? 9 : 10));
    const south = canals("S1", 10, { practice: "SOUTH" });
    const trainee = canals("T1", 50, { practice: "SOUTH", worker: "person:t", volume: 77 });
    await insertFacts(pool(), [...canals("A1", 10), ...north, ...south, ...trainee]);
    await pool().query(
      `insert into people (file_id, line, fields, person, practice, code, "from", peers) values (1, 2, 0, 't', 'SOUTH', 'T1', '2020-01-01', 'trainee')`,
    );
    const found = await referenceOf("volume");
    const expected = volumes([...north, ...south]);
    expect([found.kind, found.n]).toEqual(["peers", expected.length]);
    expect(found.estimate).toBeCloseTo(quantile(expected, 0.5) ?? Number.NaN, 9);
  });

  it("takes the peers written down last before the period's end", async () => {
    const rows = ["A", "B", "C", "D", "E", "F", "G"].flatMap((code) =>
      canals(`${code}1`, 10, {
        practice: code < "D" ? "NORTH" : "SOUTH",
        worker: `person:${code}`,
      }),
    );
    await insertFacts(pool(), rows);
    for (const code of ["A", "B", "C", "D", "E", "F"]) {
      await pool().query(
        `insert into people (file_id, line, fields, person, practice, code, "from", peers) values (1, 2, 0, $1, 'NORTH', $1, '2026-01-01', 'specialist')`,
        [code],
      );
    }
    await pool().query(
      `insert into people (file_id, line, fields, person, practice, code, "from", peers) values (1, 2, 0, 'A', 'NORTH', 'A1', '2020-01-01', 'trainee'), (1, 2, 0, 'A', 'NORTH', 'A1', '2026-10-01', 'trainee')`,
    );
    const found = await referenceOf("volume", "person:A");
    expect([found.kind, found.n]).toEqual(["peers", 50]);
    // G has no peers written down and nobody to share that with.
    expect((await referenceOf("volume", "person:G")).kind).toBe("none");
  });

  it("does not stand where one of the others has over half of the units, and does at exactly half", async () => {
    const small = five.slice(1).flatMap((code) => canals(code, 10));
    await insertFacts(pool(), [...canals("A1", 10), ...small, ...canals("B2", 41)]);
    expect((await referenceOf("volume")).kind).toBe("none");
    await pool().query("truncate canal_facts, visit_facts");
    await insertFacts(pool(), [...canals("A1", 10), ...small, ...canals("B2", 40)]);
    expect((await referenceOf("volume")).kind).toBe("practice");
  });

  it("takes the clinician's own four quarters before, and says when there are none", async () => {
    const before = [
      ...canals("A1", 15, { day: "2025-07-01" }),
      ...canals("A1", 16, { day: "2026-06-30", volume: 40 }),
    ];
    await insertFacts(pool(), [
      ...canals("A1", 10, { volume: 1 }),
      ...before,
      ...canals("A1", 9, { day: "2025-06-30", volume: 500 }),
      ...canals("B2", 200, { volume: 2 }),
    ]);
    const own = await referenceOf("volume", "NORTH/A1", ownReach(viewer("NORTH/A1")));
    expect([own.kind, own.n]).toEqual(["own", 31]);
    expect(own.estimate).toBeCloseTo(quantile(volumes(before), 0.5) ?? Number.NaN, 9);
    expect(own.interval).toMatchObject({ lower: medianInterval(volumes(before), 0.95)?.lower });
    const none = await referenceOf("volume", "NORTH/B2");
    expect([none.kind, none.estimate, none.interval]).toEqual(["none", null, null]);
    expect(none.why).toMatch(/Fewer than 5 other clinicians/);
  });
});

describe("whom a reach may ask about", () => {
  it("gives nothing about another clinician, or to a reach that may not tell clinicians apart", async () => {
    if (!quarter) throw new Error("no quarter");
    await insertFacts(
      pool(),
      ["A1", ...five].flatMap((code) => canals(code, 10)),
    );
    const asked = {
      measures: ["volume"],
      periods: [quarter],
      targets: [{ worker: "NORTH/A1", period: 0 }],
      comparison: "practice",
      ends: { ranks: () => undefined, reach: () => undefined },
    } as const;
    expect(await others(ownReach(viewer("NORTH/A1")), asked)).toHaveLength(1);
    expect(await others(ownReach(viewer("NORTH/B2")), asked)).toEqual([]);
    const officer = {
      userId: "u",
      name: "n",
      email: "e",
      grants: [{ role: "quality-officer" as const, practice: null, clinicianKey: null }],
    };
    expect(await others(qualityReach(officer), asked)).toEqual([]);
    expect(await others(narrowed(lead, "SOUTH"), asked)).toEqual([]);
  });
});
