import { mkdtemp, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { newWatch, type Taken, takeFinished, type Watch } from "@/lib/reports/take-finished";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";

// Expected values follow from what a watch promises; worked by hand.

let database: ScratchDatabase;
let folder = "";
let watch: Watch;
const { records } = holderReach();

beforeEach(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  folder = await mkdtemp(join(tmpdir(), "canal-audit-watch-"));
  watch = newWatch(folder, 1000);
});
afterEach(async () => {
  await disconnect();
  await database.drop();
  await rm(folder, { recursive: true, force: true });
});

const head =
  "session_id,practice,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome";
const row = (id: string) =>
  `${id},OAK,OAK-1,C01,reference-1,2026-07-03T09:10,26,fdi,primary,completed`;

/** Writes a file that was last written to so many seconds ago. */
async function put(name: string, text: string, secondsAgo = 60) {
  const at = new Date(Date.now() - secondsAgo * 1000);
  await writeFile(join(folder, name), text);
  await utimes(join(folder, name), at, at);
}

async function look(): Promise<Taken[]> {
  const taken: Taken[] = [];
  const how = { zone: "Europe/London", key: Buffer.alloc(32, 7) };
  for await (const one of takeFinished(records, watch, how)) taken.push(one);
  return taken;
}

test("a file is taken when it is as it was at the look before, and once", async () => {
  await put("sessions.csv", `${head}\n${row("V-1")}\n`);
  expect(await look()).toEqual([]);
  const [taken] = await look();
  expect(taken).toMatchObject({ file: "sessions.csv", files: [{ accepted: 1 }] });
  expect(await look()).toEqual([]);
});

test("one that grew since, or was written to a moment ago, is left alone until it is finished", async () => {
  await put("sessions.csv", head);
  await look();
  await put("sessions.csv", `${head}\n${row("V-1")}\n`, 0);
  expect(await look()).toEqual([]);
  expect(await look()).toEqual([]);
  await put("sessions.csv", `${head}\n${row("V-1")}\n`);
  await look();
  expect(await look()).toMatchObject([{ file: "sessions.csv", files: [{ accepted: 1 }] }]);
});

test("the same content under another name is not taken again; a grown file is", async () => {
  await put("sessions.csv", `${head}\n${row("V-1")}\n`);
  await look();
  await look();
  await put("sessions copy.csv", `${head}\n${row("V-1")}\n`);
  await look();
  expect(await look()).toMatchObject([{ file: "sessions copy.csv", again: 1 }]);
  await put("sessions.csv", `${head}\n${row("V-1")}\n${row("V-2")}\n`, 30);
  await look();
  expect(await look()).toMatchObject([{ files: [{ accepted: 1, repeated: 1 }] }]);
});

test("a file that nothing knows how to read is told once, and costs no other", async () => {
  await put("a.csv", "x;y\n1;2\n");
  await put("sessions.csv", `${head}\n${row("V-1")}\n`);
  await put(".hidden.csv", "x;y\n1;2\n");
  await put("notes.md", "notes");
  await look();
  const taken = await look();
  expect(taken.map(({ file }) => file)).toEqual(["a.csv", "sessions.csv"]);
  expect(taken[0]).toHaveProperty("trouble", expect.stringContaining("make a mapping once"));
  expect(await look()).toEqual([]);
});
