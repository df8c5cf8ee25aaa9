import { afterAll, beforeAll, expect, test } from "vitest";
import { rewordOwnTerm } from "@/lib/reports/protocol/change-terms";
import { upkeepExport, upkeepPage } from "@/lib/reports/upkeep-page";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, delivery, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";

// Expected values are worked by hand: both practices work on 3 and 6 July; OAK alone adds a task, on 5 July at 00:30 there.

const officer = viewerAs("quality-officer");
const lead = viewerAs("clinical-lead");
const asked = { period: "2026-Q3" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const at = ["OAK", "ELM"].flatMap((practice) =>
    ["03", "06"].map((day) => ({
      ...{ ...visit, practice, chair: `${practice}-1`, session_id: `${practice}-${day}` },
      ...{ patient: `hash-${practice}-${day}`, started_at: `2026-07-${day}T08:10:00.000Z` },
      ended_at: `2026-07-${day}T09:00:00.000Z`,
    })),
  );
  await bringIn({
    sessions: at,
    canals: at.map(({ session_id }) => ({ ...canal, session_id })),
    irrigation: at.map(({ session_id }) => ({ ...delivery, session_id, delivery: "continuous" })),
  });
  await pool().query(
    `insert into own_terms (practice, kind, code, words, by, at)
     values ('OAK', 'task', 'own-motor', 'Motor oiled', 'x', '2026-07-04 23:30+00')`,
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const own = { ...asked, task: "own-motor" };

test("a practice's own task is asked of that practice alone, from the day it was added", async () => {
  const page = await upkeepPage(officer, own);
  expect(page.finding).toBe("Motor oiled. 1 day in use: 1 no record.");
  expect(page.calendar.chairs.map(({ chair }) => chair)).toEqual(["OAK-1"]);
  expect(page.calendar.list.map(({ day }) => day)).toEqual(["6 Jul 2026"]);
  const days = page.calendar.chairs[0]?.calendar.rows.flatMap(({ days: some }) => some) ?? [];
  expect(days.find((one) => one?.day === "2026-07-03")?.words).toBe(
    "3 Jul 2026: in use, the task not asked for",
  );
  const { text } = await upkeepExport(officer, asked);
  expect(text.split("\r\n").filter((line) => line.includes("own-motor"))).toEqual([
    "OAK,OAK-1,2026-07-06,yes,own-motor,,,,no record",
  ]);
  // The tasks that every practice has are asked for on every day in use.
  expect((await upkeepPage(officer, asked)).finding).toBe(
    "Line rinse. 4 chair-days in use: 4 no record.",
  );
});

test("other words for it change nothing of the days, and a quarter before it does not offer it", async () => {
  const words = { kind: "task", practice: "OAK", code: "own-motor", words: "Motor greased" };
  expect((await rewordOwnTerm(lead, words)).done).toBeDefined();
  expect((await upkeepPage(officer, own)).finding).toBe(
    "Motor greased. 1 day in use: 1 no record.",
  );
  const before = await upkeepPage(officer, { period: "2026-Q2" });
  expect(before.tasks.map(({ name }) => name)).toEqual(["line-rinse", "line-dry"]);
});
