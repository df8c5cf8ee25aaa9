import { createReadStream, createWriteStream, readFileSync } from "node:fs";
import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { createGunzip } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { medianEnds } from "@/lib/audit/median-ends";
import type { Tally } from "@/lib/measures/tally";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { type Period, period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { type ImportResult, importRecords } from "@/lib/reports/import-records";
import { disconnect } from "@/lib/store/database";
import { tallies } from "@/lib/store/figures/tallies";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import type { Records } from "../plain/records";
import { storedRecords } from "../plain/stored-records";
import { plainTallies } from "../plain/tally";
import { setByPractice } from "../protocol/with-limits";
import { putVersions } from "../store/figures/put-in-force";

/**
 * One quarter of invented records of two practices, bad rows among them, as files. Expected values are computed by a
 * program that is no part of the project and shares no code with it; truth.json is what it wrote.
 */
const folder = "tests/data/quarter";
type Counts = Record<string, number>;
type Truth = Record<string, Counts | number | Record<string, Counts>> & {
  population: number;
  excluded: Counts;
  criteria: Record<string, Counts>;
};
const truth: {
  period: string;
  figures: Record<string, Truth>;
  mess: { table: string; key: string; why: string }[];
} = JSON.parse(readFileSync(join(folder, "truth.json"), "utf8"));

let database: ScratchDatabase;
let files: string;
let first: ImportResult;
let found: Figure[];
let records: Records;
const kinds = ["group", "practice", "clinician", "chair"] as const;
const inForce = defaults.map(({ id }) => id).filter((id) => id !== "record-complete");
const quarter = period(truth.period) as Period;

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  files = await mkdtemp(join(tmpdir(), "canal-audit-quarter-"));
  first = await bringIn();
  // Those that are not in force until a practice sets them are counted with the tests' limits.
  const practices = Object.keys(truth.figures).filter((who) => /^\*./.test(who));
  await putVersions(
    practices.map((who) => who.slice(1)),
    setByPractice,
  );
  found = await ofTheQuarter();
  records = await storedRecords();
});
afterAll(async () => {
  await disconnect();
  await database.drop();
  await rm(files, { recursive: true, force: true });
});

describe("a quarter with known figures", () => {
  test("has exactly the bad rows held, or repeated where they are exact duplicates", () => {
    const isRepeated = ({ why }: { why: string }) => why.startsWith("exact duplicate");
    const bad = truth.mess.filter((row) => !isRepeated(row));
    const named = (rows: readonly { table: string; key: string }[]) =>
      rows.map(({ table, key }) => `${table} ${key}`).sort();
    expect(named(first.held.map((row) => ({ ...row, key: row.sessionId ?? row.key })))).toEqual(
      named(bad),
    );
    const repeated = first.files.reduce((total, file) => total + file.repeated, 0);
    expect(repeated).toBe(truth.mess.filter(isRepeated).length);
    for (const file of first.files) {
      expect(file.accepted + file.repeated + file.held + file.letGo, file.name).toBe(file.read);
    }
  });

  test.each(Object.keys(truth.figures))("has the known counts and medians of %s", (who) => {
    expect(countsOf(who)).toEqual(known(who));
  });

  // Expected values: computed by the plain in-memory version under tests/plain, which shares no code with what it checks.
  test.each(defaults.map(({ id }) => id))("is counted plainly as in PostgreSQL: %s", async (id) => {
    const measures = [`criterion/${id}`];
    const asked = { measures, by: kinds, ends: medianEnds(0.95) };
    const counted = await tallies(holderReach().figures, { ...asked, periods: [quarter] });
    const plain = plainTallies(records, { ...asked, period: quarter, inForce });
    expect(counted.map(withoutWords).sort(byText)).toEqual(plain.map(withoutWords).sort(byText));
    expect(counted.length).toBeGreaterThan(0);
  });

  test("is the same after the files are brought in again", async () => {
    const { files: again } = await bringIn();
    expect(again.reduce((total, file) => total + file.accepted, 0)).toBe(0);
    expect(await ofTheQuarter()).toEqual(found);
  });
});

/** A tally without its criterion's wording, its keys in one order. */
function withoutWords({
  criterion: _,
  changedOn: __,
  targetsDiffer: ___,
  ...tally
}: Tally): string {
  const { period: of, ...counts } = tally;
  return JSON.stringify({ ...counts, period: of.name }, sorted);
}

function sorted(_: string, value: unknown): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}

function byText(one: string, other: string): number {
  return one < other ? -1 : 1;
}

async function bringIn(): Promise<ImportResult> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".gz"));
  const sources = await Promise.all(
    names.map(async (packed) => {
      const name = packed.replace(/\.gz$/, "");
      const path = join(files, name);
      await pipeline(
        createReadStream(join(folder, packed)),
        createGunzip(),
        createWriteStream(path),
      );
      return { path, name };
    }),
  );
  const how = { zone: "Europe/London", key: Buffer.alloc(32, 7) };
  return importRecords(holderReach().records, sources, how);
}

async function ofTheQuarter(): Promise<Figure[]> {
  const asked = period(truth.period);
  if (!asked) throw new Error(`no period: ${truth.period}`);
  return figures(holderReach().figures, {
    periods: [asked],
    by: ["group", "practice", "clinician"],
  });
}

/** What truth.json says of somebody, by measure, in the words of a figure. */
function known(who: string): Record<string, Counts> {
  const of = truth.figures[who];
  if (!of) throw new Error(who);
  const { population, excluded, criteria, ...measures } = of;
  const byMeasure = Object.entries(measures as Record<string, Counts>).map(
    ([measure, { not_recorded: notRecorded = 0, median, ...counts }]) => [
      measure,
      {
        ...counts,
        notRecorded,
        ...(median === undefined ? {} : { median: rounded(median), population, ...excluded }),
      },
    ],
  );
  const byCriterion = Object.entries(criteria).map(
    ([id, { not_recorded: notRecorded, not_met: notMet, ...counts }]) => [
      `criterion/${id}`,
      { ...counts, notRecorded, notMet },
    ],
  );
  return Object.fromEntries([...byMeasure, ...byCriterion]);
}

/** The same of the figures found, for the measures that truth.json knows. */
function countsOf(who: string): Record<string, unknown> {
  const whose = found.filter(({ about }) =>
    who === "*"
      ? about.kind === "group"
      : who.startsWith("*")
        ? about.kind === "practice" && about.code === who.slice(1)
        : about.kind === "clinician" && about.code === who,
  );
  const wanted = Object.keys(known(who));
  return Object.fromEntries(
    whose
      .filter(({ measure }) => wanted.includes(measure))
      .map((one) => [one.measure, counted(one)]),
  );
}

function counted(figure: Figure): Record<string, unknown> {
  const { population, notRecorded, estimate } = figure;
  const all = (reasons: Readonly<Counts>) => Object.values(reasons).reduce((a, b) => a + b, 0);
  if (figure.kind === "median") {
    return {
      n: figure.n,
      median: rounded(estimate ?? Number.NaN),
      notRecorded,
      population,
      ...figure.excluded,
    };
  }
  const { numerator, denominator, notMet } = figure;
  if (!figure.measure.startsWith("criterion/")) return { numerator, denominator, notRecorded };
  const excluded = all(figure.excluded);
  return {
    population,
    excluded,
    excepted: all(figure.excepted),
    met: numerator,
    notMet,
    notRecorded,
  };
}

/** Medians agree to 1e-9. */
function rounded(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
