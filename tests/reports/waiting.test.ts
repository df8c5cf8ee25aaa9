import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { type Begun, startImport } from "@/lib/reports/start-import";
import { tryMapping } from "@/lib/reports/try-mapping";
import { waitingFilePage } from "@/lib/reports/waiting-file";
import { bringWaitingIn, waitingList } from "@/lib/reports/waiting-files";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { importOf } from "@/lib/store/import/imports";
import { keptMappings } from "@/lib/store/mappings";
import { freshDatabase } from "../fresh-database";
import { viewerAs } from "../store/comparing/viewers";

// Counts are computed by a plain reading of the files in tests/intake/mapping; the rest follows by hand from what the pages promise.

let database: ScratchDatabase;
let home = "";
const reach = holderReach().records;
const keeper = viewerAs("record-keeper");
const kept = { ...process.env };
const data = join(import.meta.dirname, "../data/foreign");

beforeEach(async () => {
  database = await freshDatabase();
  home = await mkdtemp(join(tmpdir(), "canal-audit-waiting-"));
  process.env.DATABASE_URL = database.url;
  process.env.CANAL_AUDIT_HOME = home;
  process.env.CANAL_AUDIT_PATIENT_KEY = "ab".repeat(32);
});
afterEach(async () => {
  await disconnect();
  await database.drop();
  await rm(home, { recursive: true, force: true });
  process.env.CANAL_AUDIT_HOME = kept.CANAL_AUDIT_HOME;
  delete process.env.CANAL_AUDIT_PATIENT_KEY;
});

async function dropped(...names: string[]): Promise<Begun> {
  const form = new FormData();
  form.set("zone", "Europe/London");
  for (const name of names)
    form.append("files", new Blob([await readFile(join(data, name))]), name);
  const { body, headers } = new Response(form);
  const type = headers.get("content-type") ?? "";
  return startImport(reach, body as unknown as AsyncIterable<Uint8Array>, type);
}

async function ended(importId: number) {
  for (let tries = 0; tries < 400; tries += 1) {
    const found = await importOf(reach, importId);
    if (found && found.state !== "reading" && found.state !== "publishing") return found;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error("the import did not end");
}

const counts = (found: Awaited<ReturnType<typeof ended>>) =>
  Object.fromEntries(
    found.files.map(({ tableName, accepted, repeated, held }) => [
      tableName,
      [accepted, repeated, held],
    ]),
  );

test("two files of other systems: mapped once, brought in together, and read by themselves the next time", async () => {
  const begun = await dropped("motor-log.csv", "chart-export.csv");
  expect(begun.importId).toBeUndefined();
  expect(begun.waiting.length).toBe(2);
  const [motor = 0, chart = 0] = begun.waiting;
  for (const id of begun.waiting) await waitingFilePage(keeper, id);

  const page = await waitingFilePage(keeper, chart);
  expect(page?.firstRows[0]?.[4]).toBe("(not shown)");
  expect(page?.columns.find(({ name }) => name === "Chart no")).toMatchObject({
    hidden: true,
    words: [],
  });
  const trying = { id: String(chart), mapping: JSON.stringify(page?.mapping) };
  const first = await tryMapping(keeper, trying, true);
  expect(first.missing).toEqual([]);
  expect(first.tables.map(({ table, good, held }) => [table, good, held])).toEqual([
    ["sessions", "116", "0"],
    ["canals", "116", "0"],
    ["instruments", "116", "0"],
    ["steps", "102", "10"],
  ]);
  const right = await readFile(join(data, "chart-export.mapping.json"), "utf8");
  const second = await tryMapping(keeper, { id: String(chart), mapping: right }, true);
  expect(second.tables.map(({ held }) => held)).toEqual(["0", "0", "0", "0"]);

  expect((await waitingList(keeper)).map(({ ready }) => ready)).toEqual([true, true]);
  const brought = await bringWaitingIn(reach, [motor, chart]);
  if ("wrong" in brought) throw new Error(brought.wrong.form);
  const done = await ended(brought.importId);
  expect(done.state).toBe("done");
  expect(counts(done)).toEqual({
    irrigation: [610, 0, 0],
    sessions: [49, 67, 0],
    canals: [116, 0, 0],
    instruments: [116, 0, 0],
    steps: [47, 65, 0],
  });
  expect((await keptMappings(reach)).map(({ name, version }) => [name, version])).toEqual([
    ["Chart export", 1],
    ["motor-log", 1],
  ]);
  for (let tries = 0; tries < 40 && (await waitingList(keeper)).length > 0; tries += 1)
    await new Promise((resolve) => setTimeout(resolve, 50));
  expect(await readdir(join(home, "waiting"))).toEqual([]);

  const again = await dropped("motor-log.csv", "chart-export.csv");
  expect(again.waiting).toEqual([]);
  const repeated = await ended(again.importId ?? 0);
  expect(counts(repeated).irrigation).toEqual([0, 610, 0]);
  expect(repeated.files.map(({ mapping, version }) => [mapping, version])).toContainEqual([
    "motor-log",
    1,
  ]);
});

test("a file without a whole mapping is not brought in, and waits on", async () => {
  const { waiting } = await dropped("chart-export.csv");
  const [id = 0] = waiting;
  const page = await waitingFilePage(keeper, id);
  const mapping = { ...page?.mapping, tables: [{ table: "sessions", fields: {} }] };
  const tried = await tryMapping(
    keeper,
    { id: String(id), mapping: JSON.stringify(mapping) },
    false,
  );
  expect(tried.missing).toContain("sessions: session_id");
  expect(await bringWaitingIn(reach, [id])).toHaveProperty("wrong.form");
  expect((await waitingList(keeper)).map(({ ready }) => ready)).toEqual([false]);
});
