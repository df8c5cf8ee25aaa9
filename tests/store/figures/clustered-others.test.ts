import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { RateFigure } from "@/lib/audit/figure";
import { medianEnds } from "@/lib/audit/median-ends";
import { period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { clusterSums } from "@/lib/statistics/cluster-sums";
import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { clusteredProportion } from "@/lib/statistics/clustered-proportion";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { disconnect, pool } from "@/lib/store/database";
import { others } from "@/lib/store/figures/others";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { type FactRow, insertFacts } from "../../reports/fact-rows";

// Expected values: computed by lib/statistics (held to published values) on the same values, patient by patient.

const quarter = period("2026-Q3");
if (!quarter) throw new Error("no quarter");
const reach = holderReach().figures;
const codes = ["A1", "B2", "B3", "B4", "B5", "B6", "B7"];

/** Canals whose values lean on the patient; some patients are seen by two clinicians. */
function made(seed: number): FactRow[] {
  const random = seededRandom(seed);
  return codes.flatMap((code, place) =>
    Array.from({ length: 8 + place }, (_, index) => {
      const level = random() * 10;
      const often = random();
      // Every fourth patient goes on to the next clinician.
      const patient = index % 4 === 0 ? `shared ${index}` : `${code} ${index}`;
      return Array.from(
        { length: 1 + Math.floor(random() * 4) },
        (): FactRow => ({
          practice: "NORTH",
          code,
          day: "2026-08-03",
          patient,
          volume: random() < 0.1 ? null : Math.round(10 * (level + random() * 3)) / 10,
          uses: 2,
          separations: random() < often / 3 ? 1 : 0,
          timerReset: random() < often ? "yes" : "no",
        }),
      );
    }).flat(),
  );
}

function byPatient(rows: readonly FactRow[]): FactRow[][] {
  const found = new Map<string, FactRow[]>();
  for (const row of rows) {
    const patient = row.patient ?? "";
    found.set(patient, [...(found.get(patient) ?? []), row]);
  }
  return [...found.values()];
}

const volumesOf = (rows: readonly FactRow[]) =>
  byPatient(rows).map((some) => some.flatMap(({ volume }) => (volume == null ? [] : [volume])));
const countsOf = (rows: readonly FactRow[], event: (row: FactRow) => number, units: number) =>
  byPatient(rows).map((some) => ({
    events: some.reduce((sum, row) => sum + event(row), 0),
    units: some.length * units,
  }));
const separations = (row: FactRow) => row.separations ?? 0;
const resets = (row: FactRow) => (row.timerReset === "yes" ? 1 : 0);

const seeds = [1, 2, 3, 4, 5];
const rowsOf = new Map(seeds.map((seed) => [seed, made(seed)]));

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

async function filled(seed: number): Promise<FactRow[]> {
  const rows = rowsOf.get(seed) ?? [];
  await pool().query("truncate canal_facts, visit_facts");
  await insertFacts(pool(), rows);
  return rows;
}

async function othersOf(worker: string) {
  return others(reach, {
    measures: ["volume", "separation-per-use", "separation-per-canal", "criterion/timer-reset"],
    periods: [quarter as NonNullable<typeof quarter>],
    targets: [{ worker, period: 0 }],
    comparison: "practice",
    ends: medianEnds(0.95),
  });
}

test.each(seeds)(
  "the others' clustered median and rates are those of their patients, seed %i",
  async (seed) => {
    const rows = await filled(seed);
    const rest = rows.filter(({ code }) => code !== "A1");
    const found = await othersOf("NORTH/A1");
    const of = (measure: string) => found.find((one) => one.measure === measure);
    const median = clusteredMedianInterval(volumesOf(rest), 0.95);
    expect(of("volume")?.n).toBe(volumesOf(rest).flat().length);
    expect(of("volume")?.clustered?.lower).toBeCloseTo(median?.lower ?? Number.NaN, 9);
    expect(of("volume")?.clustered?.upper).toBeCloseTo(median?.upper ?? Number.NaN, 9);
    expect(of("volume")?.clustered?.designEffect).toBeCloseTo(
      median?.designEffect ?? Number.NaN,
      9,
    );
    expect(of("separation-per-use")?.clusters).toEqual(clusterSums(countsOf(rest, separations, 2)));
    expect(of("separation-per-canal")?.clusters).toEqual(
      clusterSums(countsOf(rest, separations, 1)),
    );
    expect(of("criterion/timer-reset")?.clusters).toEqual(clusterSums(countsOf(rest, resets, 1)));
  },
);

test.each(seeds)(
  "the figures' clustered intervals are those of their patients, seed %i",
  async (seed) => {
    const rows = await filled(seed);
    const found = await figures(reach, {
      measures: ["volume", "separation-per-use", "criterion/timer-reset"],
      periods: [quarter as NonNullable<typeof quarter>],
      by: ["group", "clinician"],
    });
    expect(found).toHaveLength(3 * 8);
    for (const figure of found) {
      const { about } = figure;
      const own =
        about.kind === "clinician" ? rows.filter(({ code }) => code === about.code) : rows;
      const expected =
        figure.measure === "volume"
          ? clusteredMedianInterval(volumesOf(own), 0.95)
          : figure.measure === "separation-per-use"
            ? clusteredProportion(countsOf(own, separations, 2), 0.95)?.interval
            : clusteredProportion(countsOf(own, resets, 1), 0.95)?.interval;
      expect(figure.clustered === null).toBe(expected === undefined);
      if (!expected || !figure.clustered) continue;
      expect(figure.clustered.method).toBe(expected.method);
      expect(figure.clustered.lower).toBeCloseTo(expected.lower, 9);
      expect(figure.clustered.upper).toBeCloseTo(expected.upper, 9);
    }
  },
);

test("one patient, or values without any above the median, have no clustered ends", async () => {
  const one = (patient: string, volume: number): FactRow => ({
    practice: "NORTH",
    code: "A1",
    day: "2026-08-03",
    patient,
    volume,
  });
  await pool().query("truncate canal_facts, visit_facts");
  await insertFacts(pool(), [
    ...Array.from({ length: 20 }, (_, place) => one("same", place)),
    ...Array.from({ length: 20 }, (_, place) => ({ ...one(`p${place}`, 7), code: "B2" })),
  ]);
  const found = await figures(reach, {
    measures: ["volume", "separation-per-canal"],
    periods: [quarter as NonNullable<typeof quarter>],
    by: ["clinician"],
  });
  expect(found.slice(0, 2).map(({ clustered }) => clustered)).toEqual([null, null]);
  const [lone, none] = found.slice(2) as RateFigure[];
  expect(lone?.clustered).toBeNull();
  expect(none?.clustered?.method).toBe("clustered-clopper-pearson");
});
