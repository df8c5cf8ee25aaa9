import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { Refused } from "@/lib/access/refused";
import { disconnect, pool } from "@/lib/store/database";
import { enterException, withdrawException } from "@/lib/store/exceptions/entered";
import { ownWork } from "@/lib/store/exceptions/whose-work";
import { revision } from "@/lib/store/facts/revision";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { visitHead } from "@/lib/store/visit/visit-head";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../bring-in";
import { at, lead, one, rows, two } from "./two-clinicians";

// Expected values are the project's own rules: whoever did the work enters, what was entered is kept.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows);
});
afterEach(async () => {
  await pool().query("truncate entered_exceptions");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const entered = { userId: "u-1", reason: "allergy", note: "told us at the desk" };
const stored = async () =>
  (
    await pool().query<{
      canal: string;
      reason: string;
      note: string;
      withdrawn_by: string | null;
    }>("select canal, reason, note, withdrawn_by from entered_exceptions order by id")
  ).rows;

test("a clinician enters one for a canal and a visit of their own, and nobody else does", async () => {
  expect(await enterException(one, at("DB", "timer-reset"), entered)).toBe("entered");
  expect(await enterException(one, at("", "isolation"), entered)).toBe("entered");
  expect(await enterException(two, at("MB1", "main-irrigant"), entered)).toBe("entered");
  for (const [reach, key] of [
    // The canal is the other's, though the visit is one's own; and the other way round.
    [one, at("MB1", "main-irrigant")],
    [two, at("", "isolation")],
    [two, at("DB", "timer-reset")],
    [one, at("MB1", "timer-reset", "V-2")],
    // The same code at another practice is another person.
    [one, at("MB1", "timer-reset", "W-1", "ELM")],
    // What is not there.
    [one, at("P", "timer-reset")],
    [one, at("", "isolation", "V-9")],
    [one, at("", "isolation", "V-1", "ELM")],
  ] as const)
    await expect(enterException(reach, key, entered), JSON.stringify(key)).rejects.toThrow(Refused);
  expect((await stored()).map(({ canal }) => canal)).toEqual(["DB", "", "MB1"]);
});

test("one that the records bear stands, and nothing is entered beside it", async () => {
  expect(await enterException(two, at("MB1", "timer-reset"), entered)).toBe("in the records");
  expect(await stored()).toEqual([]);
});

test("a second takes the place of the first, which is kept as withdrawn; then that is withdrawn too", async () => {
  const key = at("DB", "timer-reset");
  await enterException(one, key, entered);
  await enterException(one, key, { ...entered, reason: "equipment-failure", note: null });
  expect(await stored()).toEqual([
    { canal: "DB", reason: "allergy", note: "told us at the desk", withdrawn_by: "A clinician" },
    { canal: "DB", reason: "equipment-failure", note: null, withdrawn_by: null },
  ]);
  await expect(withdrawException(two, key)).rejects.toThrow(Refused);
  expect(await withdrawException(one, key)).toBe(true);
  expect(await withdrawException(one, key)).toBe(false);
  expect((await stored()).every((row) => row.withdrawn_by !== null)).toBe(true);
});

test("two at once leave one in force", async () => {
  const key = at("DB", "timer-reset");
  await Promise.all(Array.from({ length: 6 }, () => enterException(one, key, entered)));
  expect((await stored()).filter((row) => row.withdrawn_by === null)).toHaveLength(1);
});

test("figures are computed anew after each, and not after what was refused", async () => {
  const key = at("DB", "timer-reset");
  const before = Number(await revision(lead));
  await enterException(one, key, entered);
  expect(Number(await revision(lead))).toBe(before + 1);
  await withdrawException(one, key);
  expect(Number(await revision(lead))).toBe(before + 2);
  await expect(enterException(two, key, entered)).rejects.toThrow(Refused);
  expect(Number(await revision(lead))).toBe(before + 2);
});

test("what of a visit is one's own work", async () => {
  const head = await visitHead(lead, "OAK", "V-1");
  const other = await visitHead(lead, "OAK", "V-2");
  if (!head || !other) throw new Error("the visits are not found");
  expect(await ownWork(one, head)).toEqual({ visit: true, canals: ["DB"], whole: false });
  expect(await ownWork(two, head)).toEqual({ visit: false, canals: ["MB1"], whole: false });
  expect(await ownWork(two, other)).toEqual({ visit: true, canals: ["MB1"], whole: true });
});
