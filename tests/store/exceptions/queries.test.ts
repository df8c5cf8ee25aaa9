import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { Refused } from "@/lib/access/refused";
import { disconnect, pool } from "@/lib/store/database";
import {
  answerQuery,
  askAbout,
  closeQuery,
  openQueries,
  queriesOf,
} from "@/lib/store/exceptions/queries";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../bring-in";
import { at, lead, leadOfElm, officer, one, rows, two } from "./two-clinicians";

// Expected values are the project's own rules: a lead asks and closes, whoever did the work answers.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows);
});
afterEach(async () => {
  await pool().query("truncate exception_queries");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const key = at("MB1", "timer-reset");
const dam = at("", "isolation");

test("asked, answered once, closed; then another can be asked, and both are kept", async () => {
  expect(await askAbout(lead, key, "Was it mended?")).toBe(true);
  expect(await askAbout(lead, key, "Again?")).toBe(false);
  expect(await answerQuery(two, key, "Yes.")).toBe(true);
  expect(await answerQuery(two, key, "No.")).toBe(false);
  expect(await closeQuery(lead, key)).toBe(true);
  expect(await closeQuery(lead, key)).toBe(false);
  expect(await askAbout(lead, key, "And since?")).toBe(true);
  const [later, first] = await queriesOf(key);
  expect(later).toMatchObject({ question: "And since?", answer: null, closedAt: null });
  expect(first).toMatchObject({
    question: "Was it mended?",
    by: "A clinical-lead",
    answer: "Yes.",
    answeredBy: "A clinician",
    closedBy: "A clinical-lead",
  });
  expect(await queriesOf(dam)).toEqual([]);
});

test("two who ask at once ask one question", async () => {
  const asked = await Promise.all(Array.from({ length: 6 }, () => askAbout(lead, key, "Why?")));
  expect(asked.filter(Boolean)).toHaveLength(1);
});

test("nobody asks, answers or closes beyond their reach", async () => {
  await askAbout(lead, key, "Was it mended?");
  await expect(askAbout(leadOfElm, key, "Why?")).rejects.toThrow(Refused);
  await expect(closeQuery(leadOfElm, key)).rejects.toThrow(Refused);
  await expect(askAbout(officer, key, "Why?")).rejects.toThrow(Refused);
  await expect(answerQuery(one, key, "Mine?")).rejects.toThrow(Refused);
  expect(await queriesOf(key)).toHaveLength(1);
});

test("open ones are seen by the lead of the practice and by whoever did the work, unanswered first", async () => {
  await askAbout(lead, key, "Was it mended?");
  await askAbout(lead, dam, "Why no dam?");
  await answerQuery(two, key, "Yes.");
  const seen = async (reach: Parameters<typeof openQueries>[0]) =>
    (await openQueries(reach)).map(({ question, clinician }) => `${question} ${clinician}`);
  expect(await seen(lead)).toEqual(["Why no dam? C01", "Was it mended? C02"]);
  expect(await seen(two)).toEqual(["Was it mended? C02"]);
  expect(await seen(one)).toEqual(["Why no dam? C01"]);
  expect(await seen(leadOfElm)).toEqual([]);
  await expect(seen(officer)).rejects.toThrow(RangeError);
  await closeQuery(lead, dam);
  expect(await seen(one)).toEqual([]);
});
