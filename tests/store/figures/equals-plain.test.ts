import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { medianEnds } from "@/lib/audit/median-ends";
import { measures } from "@/lib/measures/measures";
import type { SubjectKind, Tally } from "@/lib/measures/tally";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { type Period, period } from "@/lib/records/period";
import { disconnect, pool } from "@/lib/store/database";
import { tallies } from "@/lib/store/figures/tallies";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { plainTallies } from "../../plain/tally";
import { setByPractice } from "../../protocol/with-limits";
import { bringIn } from "../bring-in";
import { emptyFor, rowsOf } from "../records-rows";
import { putVersions } from "./put-in-force";

// Expected values are computed by the plain version under tests/plain.

const kinds: readonly SubjectKind[] = ["group", "practice", "clinician", "chair"];
const level = 0.5;
const ends = medianEnds(level);
const periods = ["2024-Q2", "2024-Q3", "2024-06", "2024-06-30..2024-07-01"].map((name): Period => {
  const found = period(name);
  if (!found) throw new Error(`no period: ${name}`);
  return found;
});

const allMeasures = [...measures.map(({ id }) => id), ...defaults.map(criterionMeasure)];
const inForce = defaults.map(({ id }) => id).filter((id) => id !== "record-complete");

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("PostgreSQL and the plain computation agree in every count and order statistic on random records", async () => {
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, fc.infiniteStream(fc.boolean()), async (records, coin) => {
      await emptyFor(records);
      await putVersions(Object.keys(records.zones), setByPractice);
      await bringIn(
        rowsOf(records),
        coin.next().value
          ? undefined
          : [
              "upkeep",
              "incidents",
              "followups",
              "instruments",
              "irrigation",
              "exceptions",
              "steps",
              "canals",
              "sessions",
              "people",
            ],
      );
      expect((await pool().query("select key, kind from held where kind <> 'check'")).rows).toEqual(
        [],
      );
      const found = await tallies(holderReach().figures, {
        measures: allMeasures,
        periods,
        by: kinds,
        ends,
      });
      const plain = periods.flatMap((one) =>
        plainTallies(records, {
          measures: allMeasures,
          period: one,
          by: kinds,
          ends,
          level,
          inForce,
        }),
      );
      expect(differing(inOrder(found), inOrder(plain))).toEqual([]);
    }),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 25),
      interruptAfterTimeLimit: 50_000,
      markInterruptAsFailure: false,
    },
  );
});

/** What only one of two lists of tallies has. */
function differing(found: readonly unknown[], plain: readonly unknown[]): string[] {
  const [some, others] = [found, plain].map(
    (list) => new Set(list.map((one) => JSON.stringify(one, sorted))),
  );
  return [
    ...[...(some ?? [])].filter((one) => !others?.has(one)).map((one) => `PostgreSQL ${one}`),
    ...[...(others ?? [])].filter((one) => !some?.has(one)).map((one) => `plainly ${one}`),
  ];
}

/** Objects with their keys in one order. */
function sorted(_: string, value: unknown): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}

/** Tallies without what is only words, floats to 9 digits, in one order. */
function inOrder(some: readonly Tally[]): unknown[] {
  return some
    .map(({ criterion, changedOn, targetsDiffer, ...tally }) => ({
      ...tally,
      period: tally.period.name,
      ...(tally.kind === "median" ? rounded(tally) : {}),
    }))
    .sort((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1));
}

function rounded({ median, quartiles, bounds, clustered }: Extract<Tally, { kind: "median" }>) {
  const to9 = (value: number | null) => (value === null ? null : Number(value.toPrecision(9)));
  return {
    median: to9(median),
    quartiles: quartiles?.map(to9) ?? null,
    bounds: bounds?.map(to9) ?? null,
    clustered: clustered && {
      clusters: clustered.clusters,
      lower: to9(clustered.lower),
      upper: to9(clustered.upper),
      designEffect: to9(clustered.designEffect),
    },
  };
}

function sortKey({
  measure,
  period: name,
  subject,
}: {
  measure: string;
  period: string;
  subject: Tally["subject"];
}): string {
  return JSON.stringify([
    measure,
    name,
    subject.kind,
    "key" in subject ? subject.key : "",
    "practice" in subject ? subject.practice : "",
    "code" in subject ? subject.code : "",
  ]);
}
