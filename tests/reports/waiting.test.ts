import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { type Begun, startImport } from "@/lib/reports/start-import";
import { bringWaitingIn } from "@/lib/reports/waiting-change";
import { keepDraft, testDraft, testSoFar } from "@/lib/reports/waiting-draft";
import { waitingFilePage } from "@/lib/reports/waiting-file-page";
import { waitingList } from "@/lib/reports/waiting-list";
import { waitingWords } from "@/lib/reports/waiting-words-of";
import { keptMappings } from "@/lib/store/mappings";
import type { TestView } from "@/lib/views/mapping/test-view";
import { viewerAs } from "../store/comparing/viewers";
import { eachInUploadHome, endedImport, sentForm } from "./upload-home";

// Counts are computed by a plain reading of the files in tests/intake/mapping; the rest follows by hand from what the pages promise.

const home = eachInUploadHome();
const reach = holderReach().records;
const keeper = viewerAs("record-keeper");
const data = join(import.meta.dirname, "../data/foreign");
/** The patient of the first visit, as the file has it. */
const patient = "pt-c3764d06d4";

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

/** The page of a file once it was looked through. */
async function opened(id: number) {
  let page = await waitingFilePage(keeper, id);
  for (let tries = 0; tries < 20 && page?.state === "looking"; tries += 1)
    page = await waitingFilePage(keeper, id);
  if (page?.state !== "open") throw new Error(`the file ${id} is ${page?.state}`);
  return page;
}

/** Good and held rows by table, of a test of the whole file. */
async function tested(id: number, draft: unknown): Promise<unknown> {
  let view: TestView | { sentence: string } | null = await testDraft(reach, id, draft);
  for (let tries = 0; tries < 100; tries += 1) {
    if (!view || "sentence" in view || view.state !== "running") break;
    await new Promise((resolve) => setTimeout(resolve, 50));
    view = await testSoFar(reach, id);
  }
  if (!view || "sentence" in view || view.state !== "done") return view;
  return view.tables.map(({ heading, good, held }) => [heading, good, held]);
}

test("two files of other systems: mapped once, brought in together, and read by themselves the next time", async () => {
  const begun = await dropped("motor-log.csv", "chart-export.csv");
  expect(begun.importId).toBeUndefined();
  expect(begun.waiting.length).toBe(2);
  const [motor = 0, chart = 0] = begun.waiting;
  const log = (await opened(motor)).editor.draft;
  const { editor } = await opened(chart);
  const [first] = editor.preview?.first.rows ?? [];
  expect(editor.preview?.first.columns[4]).toEqual({ name: "Chart no", hidden: true });
  expect(first?.cells[4]).toBe("");
  expect(JSON.stringify(editor)).not.toContain(patient);
  expect(await waitingWords(keeper, chart, "Chart no")).toMatchObject({ words: [], hidden: true });
  expect((await waitingWords(keeper, chart, "Dam"))?.words.map(({ text }) => text).sort()).toEqual([
    "",
    "?",
    "n/p",
    "x",
  ]);

  expect(await tested(motor, log)).toEqual([["Deliveries of irrigant", "610", "0"]]);
  const right = JSON.parse(await readFile(join(data, "chart-export.mapping.json"), "utf8"));
  expect((await waitingList(keeper)).files.map(({ ready }) => ready)).toEqual([true, false]);
  expect(await bringWaitingIn(reach, [motor, chart])).toHaveProperty("wrong.form");
  expect(await tested(chart, right)).toEqual([
    ["Visits", "116", "0"],
    ["Canals", "116", "0"],
    ["Uses of instruments", "116", "0"],
    ["Steps of the protocol", "112", "0"],
  ]);

  expect((await waitingList(keeper)).files.map(({ ready }) => ready)).toEqual([true, true]);
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
  for (let tries = 0; tries < 40 && (await waitingList(keeper)).files.length > 0; tries += 1)
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

test("a file without a whole mapping is not brought in, and waits on with its draft", async () => {
  const { waiting } = await dropped("chart-export.csv");
  const [id = 0] = waiting;
  const { draft } = (await opened(id)).editor;
  const preview = await keepDraft(reach, id, {
    ...draft,
    tables: [{ table: "sessions", fields: {} }],
  });
  expect(preview).toMatchObject({ wrong: null, tables: [{ table: "sessions", fields: [] }] });
  expect((await opened(id)).editor.draft.tables).toEqual([{ table: "sessions", fields: {} }]);
  expect(await bringWaitingIn(reach, [id])).toHaveProperty("wrong.form");
  expect((await waitingList(keeper)).files.map(({ ready }) => ready)).toEqual([false]);
});

test("a draft that is no mapping is refused by its place, and the kept one stays", async () => {
  const { waiting } = await dropped("chart-export.csv");
  const [id = 0] = waiting;
  const { draft } = (await opened(id)).editor;
  const sent = { ...draft, tables: [{ table: "sessions", fields: { colour: { always: "red" } } }] };
  expect(await keepDraft(reach, id, sent)).toMatchObject({
    sentence: expect.stringMatching(/tables › 0 › fields › colour: .*no field "colour"/),
  });
  expect((await opened(id)).editor.draft).toEqual(draft);
  expect(await keepDraft(reach, 2 ** 30, draft)).toBe(null);
});
