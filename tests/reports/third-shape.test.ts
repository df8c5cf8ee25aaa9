import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { type ImportResult, importRecords } from "@/lib/reports/import-records";
import { mappingsNamed } from "@/lib/reports/mappings-named";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { type Delivery, inventedVisits, type Visit } from "../intake/third-shape/invented-visits";
import { chartText, pumpText } from "../intake/third-shape/written-files";
import { storedRecords } from "../plain/stored-records";

// Expected values are computed below from the invented facts by plain loops, which share nothing with the reading or the joining.

const { visits, deliveries } = inventedVisits();
const named = ["tests/data/third/chart.mapping.json", "tests/data/third/pump.mapping.json"];
let database: ScratchDatabase;
let folder = "";
let brought: ImportResult;

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  folder = await mkdtemp(join(tmpdir(), "canal-audit-third-"));
  await writeFile(join(folder, "seances.txt"), chartText(visits));
  await writeFile(join(folder, "pompes.ndjson"), pumpText(deliveries));
  brought = await bringIn("pompes.ndjson", "seances.txt");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
  await rm(folder, { recursive: true, force: true });
});

/** The visits that a pump's row may mean: within five minutes beside, of its practice, chair, tooth; by its canal where several fit. */
function meant({ visit: own, ...row }: Delivery): Visit[] {
  const tooth = own && row.toothWritten ? own.quadrant + own.position : undefined;
  const fitting = visits.filter(
    (visit) =>
      visit.site === row.site &&
      visit.chair === row.chair &&
      row.at >= visit.start - 300_000 &&
      row.at <= visit.end + 300_000 &&
      (tooth === undefined || tooth === visit.quadrant + visit.position),
  );
  const withCanal = fitting.filter(({ canals }) => canals.some(({ name }) => name === row.canal));
  return withCanal.length === 1 ? withCanal : fitting;
}

/** Joined to a visit that has no such canal, as where the tooth was not written: held, too. */
const joined = deliveries.flatMap((row) => {
  const [visit, ...others] = meant(row);
  const fits = visit?.canals.some(({ name }) => name === row.canal);
  return visit && others.length === 0 && fits ? [{ row, visit }] : [];
});

test("some rows mean one visit, some several and some none", () => {
  const counts = [0, 1, 2].map((many) => deliveries.filter((row) => meant(row).length === many));
  for (const rows of counts) expect(rows.length).toBeGreaterThan(5);
});

test("the pump's rows join the charts' visits, though they came first", async () => {
  const stored = (await storedRecords()).irrigation.map((row) =>
    [row.practice, row.session_id, row.canal, row.started_at, row.irrigant, row.duration_s].join(),
  );
  const expected = joined.map(({ row, visit }) =>
    [
      ...[visit.site, visit.id, row.canal, new Date(row.at).toISOString()],
      ...[row.irrigant, row.durationS],
    ].join(),
  );
  expect(stored.sort()).toEqual(expected.sort());
});

test("a row that may mean several visits is held and names them all; one that means none says so", () => {
  const held = brought.held.filter(({ table }) => table === "irrigation");
  expect(held.length).toBe(deliveries.length - joined.length);
  const several = deliveries.filter((row) => meant(row).length > 1);
  for (const row of several) {
    const line = deliveries.indexOf(row) + 5;
    const found = held.find((one) => one.line === line);
    const reason = found?.reasons.map(({ sentence }) => sentence).join(" ") ?? "";
    for (const { site, id } of meant(row)) expect(reason).toContain(`${site} ${id}`);
  }
});

test("the charts are there once, however many rows a visit has", async () => {
  const records = await storedRecords();
  expect(records.sessions.length).toBe(visits.length);
  expect(records.canals.length).toBe(visits.flatMap(({ canals }) => canals).length);
  expect(records.upkeep.length).toBe(4);
});

test("separations are those of the charts", async () => {
  const asked = period("2026-Q4");
  if (!asked) throw new Error("no period");
  const found = await figures(holderReach().figures, {
    measures: ["separation-per-use", "separation-per-canal", "separation-per-visit"],
    periods: [asked],
    by: ["group", "practice"],
  });
  const counted = found.map((one) => {
    if (one.kind === "median") throw new Error(one.measure);
    const whose = one.about.kind === "practice" ? one.about.code : "*";
    return [one.measure, whose, one.numerator, one.denominator];
  });
  const expected = ["*", "A", "B"].flatMap((whose) => {
    const used = (canal: Visit["canals"][number]) => canal.files > 0;
    const own = visits.filter(
      ({ site, canals }) => (whose === "*" || site === whose) && canals.some(used),
    );
    const canals = own.flatMap((visit) => visit.canals.filter(used));
    const sum = (of: (canal: (typeof canals)[number]) => number) =>
      canals.reduce((total, canal) => total + of(canal), 0);
    const separated = sum((canal) => canal.separated);
    const hit = own.filter((visit) => visit.canals.some((canal) => canal.separated > 0));
    return [
      ["separation-per-use", whose, separated, sum((canal) => canal.files)],
      ["separation-per-canal", whose, sum((canal) => Math.min(1, canal.separated)), canals.length],
      ["separation-per-visit", whose, hit.length, own.length],
    ];
  });
  expect(counted.map(String).sort()).toEqual(expected.map(String).sort());
});

test("a log that overlaps the last one adds nothing twice", async () => {
  await writeFile(join(folder, "later.ndjson"), pumpText(deliveries.slice(211)));
  const { files } = await bringIn("later.ndjson");
  expect(files.reduce((sum, { accepted }) => sum + accepted, 0)).toBe(0);
});

async function bringIn(...names: string[]): Promise<ImportResult> {
  const { records } = holderReach();
  return importRecords(
    records,
    names.map((name) => ({ path: join(folder, name), name })),
    {
      ...{ zone: "Europe/Paris", key: Buffer.alloc(32, 7) },
      mappings: await mappingsNamed(records, named, (path) => path),
    },
  );
}
