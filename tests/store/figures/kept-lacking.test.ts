import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, ownReach } from "@/lib/access/reach";
import { medianEnds } from "@/lib/audit/median-ends";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import type { Values } from "@/lib/records/column";
import { quarter } from "@/lib/records/period";
import { disconnect } from "@/lib/store/database";
import { enterException, withdrawException } from "@/lib/store/exceptions/entered";
import { tallies } from "@/lib/store/figures/tallies";
import { unitList } from "@/lib/store/figures/unit-list";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { undoImport } from "@/lib/store/import/undo-import";
import { putInForce, takeOutOfForce } from "@/lib/store/protocol/change-protocol";
import { freshDatabase } from "../../fresh-database";
import { cases } from "../../protocol/hand-made/record-complete";
import { bringIn } from "../bring-in";
import { viewerAs } from "../comparing/viewers";

// Expected counts are worked by hand: V-1 is a record from which nothing is missing, V-2 is the same visit without its dam step.

const { figures, records } = holderReach();
const own = ownReach(viewerAs("clinician", "NORTH", "NORTH/A"));
const period = quarter(2024, 3);
const measure = "criterion/record-complete";
const asked = {
  measures: [measure],
  periods: [period],
  by: ["group"],
  ends: medianEnds(0.95),
} as const;
const isolation = defaults.find(({ id }) => id === "isolation") as Criterion;
const [{ records: complete } = { records: {} }] = cases;

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

/** Met, of how many; and how many a list of those that are not met has. */
async function counted(): Promise<[number, number, number]> {
  const [tally] = await tallies(figures, asked);
  const { all } = await unitList(figures, {
    ...{ measure, period, state: "not-met", limit: 10, offset: 0 },
  });
  if (tally?.kind !== "rate") throw new Error("nothing was counted");
  return [tally.numerator, tally.denominator, all];
}

/** What is counted after the work, with others asking before it, beside it and until it is done. */
async function after(work: () => Promise<unknown>): Promise<[number, number, number]> {
  let working = true;
  const asking = Array.from({ length: 2 }, async (_, place) => {
    await new Promise((go) => setTimeout(go, place * 7));
    while (working) await tallies(figures, asked);
  });
  await work();
  working = false;
  const found = await counted();
  await Promise.all(asking);
  expect(await counted()).toEqual(found);
  return found;
}

function rowsOf(session: string, without?: string): Record<string, Values[]> {
  const renamed = (row: Values): Values => ({ ...row, session_id: session });
  return Object.fromEntries(
    Object.entries(complete).map(([table, rows]) => [
      table,
      (rows as Values[]).filter(({ step }) => !without || step !== without).map(renamed),
    ]),
  );
}

test("what the other criteria lack is found out anew after every change that bears on it", async () => {
  const day = "2024-08-14";
  const when = { practices: ["NORTH"], reason: "for the test", from: day, today: day };
  const key = { practice: "NORTH", sessionId: "V-2", canal: "", criterion: "isolation" };
  const why = { userId: "u", reason: "not-possible", note: null };

  await bringIn(rowsOf("V-1"));
  expect(await counted()).toEqual([1, 1, 0]);
  let importId = 0;
  expect(
    await after(async () => {
      ({ importId } = await bringIn(rowsOf("V-2", "dam")));
    }),
  ).toEqual([1, 2, 1]);
  expect(await after(() => enterException(own, key, why))).toEqual([2, 2, 0]);
  expect(await after(() => withdrawException(own, key))).toEqual([1, 2, 1]);
  expect(await after(() => takeOutOfForce(figures, { ...when, id: "isolation" }))).toEqual([
    2, 2, 0,
  ]);
  expect(await after(() => putInForce(figures, { ...when, criterion: isolation }))).toEqual([
    1, 2, 1,
  ]);
  expect(await after(() => undoImport(records, importId))).toEqual([1, 1, 0]);
  expect(
    await after(() => bringIn({ ...rowsOf("V-2", "dam"), steps: rowsOf("V-2").steps ?? [] })),
  ).toEqual([2, 2, 0]);
});
