import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { type Begun, startImport } from "@/lib/reports/start-import";
import { tryMapping } from "@/lib/reports/try-mapping";
import { waitingFilePage } from "@/lib/reports/waiting-file";
import { bringWaitingIn, waitingList } from "@/lib/reports/waiting-files";
import { keptMappings } from "@/lib/store/mappings";
import { viewerAs } from "../store/comparing/viewers";
import { eachInUploadHome, endedImport, sentForm } from "./upload-home";

// Counts are computed by a plain reading of the files in tests/intake/mapping; the rest follows by hand from what the pages promise.

const home = eachInUploadHome();
const reach = holderReach().records;
const keeper = viewerAs("record-keeper");
const data = join(import.meta.dirname, "../data/foreign");

async function dropped(...names: string[]): Promise<Begun> {
  const files = await Promise.all(names.map((name) => readFile(join(data, name))));
  return startImport(
    reach,
    ...sentForm(Object.fromEntries(names.map((name, place) => [name, files[place] ?? ""]))),
  );
}

const counts = (found: Awaited<ReturnType<typeof endedImport>>) =>
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
  const done = await endedImport(brought.importId);
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
  expect(await readdir(join(home(), "waiting"))).toEqual([]);

  const again = await dropped("motor-log.csv", "chart-export.csv");
  expect(again.waiting).toEqual([]);
  const repeated = await endedImport(again.importId);
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
