import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import {
  askAboutException,
  enterOwnException,
  withdrawOwnException,
} from "@/lib/reports/exception-acts";
import { exceptionUnit } from "@/lib/reports/exception-unit";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";

// Expected values are worked by hand from the rows below: one canal of C01's, and one of C02's at the same visit.

const lead = viewerAs("clinical-lead");
const one = viewerAs("clinician", "OAK", "OAK/C01");
const two = viewerAs("clinician", "OAK", "OAK/C02");

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: [{ ...visit, session_id: "V-1" }],
    canals: [
      { ...canal, session_id: "V-1", timer_reset: "no" },
      { ...canal, session_id: "V-1", canal: "DB", clinician: "C02", timer_reset: "no" },
    ],
  });
  await pool().query(
    `insert into own_terms (practice, kind, code, words, by) values ('OAK', 'reason', 'own-power', 'Power cut', 'x')`,
  );
});
afterEach(async () => {
  await pool().query("truncate entered_exceptions, exception_queries");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const form = (more: Record<string, string> = {}) => ({
  ...{ practice: "OAK", session: "V-1", criterion: "timer-reset", canal: "MB1" },
  ...{ reason: "equipment-failure", note: "", ...more },
});

it("leaves the exception, its note and what was asked in sight, said as withdrawn", async () => {
  await enterOwnException(one, form({ note: "The socket." }));
  await askAboutException(lead, form({ question: "Which?" }));
  await withdrawOwnException(one, form());
  for (const viewer of [one, lead]) {
    const [was, ...more] = (await exceptionUnit(viewer, form(), "MB1"))?.there ?? [];
    expect(more).toEqual([]);
    expect(was).toMatchObject({
      ...{ withdrawn: expect.stringContaining(", "), note: "The socket.", mayWithdraw: false },
      ...{ mayAsk: false, mayAnswer: viewer === one, mayClose: viewer === lead },
    });
    expect(was?.queries.map(({ state }) => state)).toEqual(["asked"]);
  }
  expect((await exceptionUnit(two, form(), ""))?.there).toEqual([]);
});

it("leaves what was asked with the exception that stands, where another took its place", async () => {
  await enterOwnException(one, form());
  await askAboutException(lead, form({ question: "Which?" }));
  await enterOwnException(one, form({ reason: "own-power" }));
  const there = (await exceptionUnit(lead, form(), ""))?.there ?? [];
  expect(
    there.map(({ reason, withdrawn, queries }) => [reason, withdrawn === null, queries.length]),
  ).toEqual([
    ["Power cut", true, 1],
    ["equipment failed", false, 0],
  ]);
  expect(new Set(there.map(({ id }) => id)).size).toBe(2);
});
