import { readFile, stat, truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { allFigures } from "@/lib/reports/all-figures";
import { sign } from "@/lib/reports/audits/scope-acts";
import { backUp } from "@/lib/reports/back-up";
import { restoreBackup } from "@/lib/reports/restore-backup";
import { withHome } from "@/lib/reports/with-home";
import { disconnect, pool } from "@/lib/store/database";
import type { Home } from "@/lib/store/home/open-home";
import { type ScratchDatabase, scratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, snapshot, use } from "../store/bring-in";
import { temporaryFolder } from "../store/home/temporary-home";
import { askedAs, viewers, viewersUrlOf } from "../store/wall/shown-to";
import { begun, lead, madeReady, rows } from "./audits/audit-home";

// Expected values are the project's own property: what is restored is what was backed up, computed from the first database.

const reach = holderReach().figures;
const key = Buffer.alloc(32, 7);
let place: Awaited<ReturnType<typeof temporaryFolder>>;
let first: ScratchDatabase;
let file = "";
let before: Awaited<ReturnType<typeof whole>>;
let tables: Awaited<ReturnType<typeof backUp>>["manifest"]["tables"] = [];

beforeAll(async () => {
  place = await temporaryFolder();
  file = join(place.folder, "backup.tar.gz");
  first = await freshDatabase();
  process.env.DATABASE_URL = first.url;
  await bringIn({
    ...rows(),
    instruments: [
      { ...use, session_id: "V-1" },
      { ...use, session_id: "V-lost" },
    ],
  });
  await bringIn(rows());
  const audit = await begun(lead);
  await madeReady(lead, audit);
  expect((await sign(lead, { audit, sure: "yes" })).done).toMatch(/version 1/);
  await pool().query("insert into settings values ('odd', $1)", ["a\tb\\N\n\\.\r é ☃ 'x'"]);
  before = await whole();
});
afterAll(async () => {
  await disconnect();
  await first.drop();
  await place.remove();
});

const homeAt = (url: string): Home => ({
  ...{
    url,
    viewersUrl: viewersUrlOf(url),
    keeperUrl: null,
    folder: place.folder,
    key,
    close: async () => {},
  },
});

/** What the database holds, told as a person would compare it. */
async function whole() {
  return { figures: await allFigures(reach), decided: await snapshot() };
}

test("a backup is restored into an empty database: every figure and every row is the same", async () => {
  const { manifest } = await backUp(homeAt(first.url), reach, file, {
    ...{ figures: true, secrets: false },
  });
  tables = manifest.tables;
  expect(manifest.files).toEqual([]);
  expect((await stat(file)).mode & 0o777).toBe(0o600);
  expect(manifest.tables.find(({ name }) => name === "signed_audits")?.rows).toBe(1);
  await disconnect();
  const other = await scratchDatabase(inject("databaseUrl"));
  process.env.DATABASE_URL = other.url;
  const done = await restoreBackup(homeAt(other.url), reach, file, false);
  expect([done.figures, done.patientKey, done.upgraded]).toEqual(["same", "same", []]);
  expect(before.figures.length).toBeGreaterThan(1);
  expect(await whole()).toEqual(before);
  // The wall stands before it again.
  const seenBy = (viewer: Viewer | null) =>
    askedAs(viewersUrlOf(other.url), viewer, async (client) => {
      return (await client.query("select from sessions")).rowCount;
    });
  expect(await seenBy(null)).toBe(0);
  expect(await seenBy(viewers.leadOfAll)).toBeGreaterThan(1);
  // Backed up again, it has the same tables to the byte.
  const again = await backUp(homeAt(other.url), reach, `${file}.2`, {
    ...{ figures: true, secrets: false },
  });
  expect(again.manifest.tables).toEqual(tables);
  expect(again.manifest.sequences).toEqual(manifest.sequences);
  // What may only grow still may only grow, and goes on after the last number.
  await expect(pool().query("delete from signed_audits")).rejects.toThrow(/kept as it was signed/);
  const { importId } = await bringIn(rows());
  expect(importId).toBe(3);
  await disconnect();
  await expect(restoreBackup(homeAt(other.url), reach, file, false)).rejects.toThrow(/not empty/);
  await pool().query("select 1");
  await expect(restoreBackup(homeAt(other.url), reach, file, true)).rejects.toThrow(/Others work/);
  await disconnect();
  expect((await restoreBackup(homeAt(other.url), reach, file, true)).figures).toBe("same");
  expect(await whole()).toEqual(before);
  await disconnect();
  await other.drop();
});

test("a backup with secrets brings the key of the embedded home back with it", async () => {
  process.env.DATABASE_URL = first.url;
  const secret = `${file}.secret`;
  await backUp(homeAt(first.url), reach, secret, { figures: true, secrets: true });
  await disconnect();
  const other = await temporaryFolder();
  process.env.CANAL_AUDIT_HOME = other.folder;
  delete process.env.DATABASE_URL;
  const restore = (from: string, replace: boolean) =>
    withHome((home) => restoreBackup(home, reach, from, replace), undefined, true);
  expect((await restore(file, false)).patientKey).toBe("another");
  expect(await restore(secret, true)).toMatchObject({ patientKey: "put back", figures: "same" });
  expect((await readFile(join(other.folder, "patient-key"), "utf8")).trim()).toBe(
    key.toString("hex"),
  );
  expect((await restore(file, true)).patientKey).toBe("same");
  await withHome(async () => expect(await whole()).toEqual(before));
  await other.remove();
});

test("what is damaged, cut short or no backup is refused before anything is touched", async () => {
  process.env.DATABASE_URL = first.url;
  const bytes = await readFile(file);
  const unpacked = gunzipSync(bytes);
  const place = unpacked.indexOf("C01");
  unpacked[place] = 66;
  const cases: [string, Buffer, RegExp][] = [
    ["changed", gzipSync(unpacked), /is damaged: the table/],
    ["short", bytes.subarray(0, bytes.length - 40), /no whole backup/],
    ["without", gzipSync(gunzipSync(bytes).subarray(0, 10_240)), /no whole backup/],
    ["text", Buffer.from("not a backup"), /no whole backup/],
  ];
  await disconnect();
  for (const [name, content, words] of cases) {
    await writeFile(`${file}.${name}`, content);
    await expect(restoreBackup(homeAt(first.url), reach, `${file}.${name}`, true)).rejects.toThrow(
      words,
    );
  }
  await expect(restoreBackup(homeAt(first.url), reach, `${file}.none`, true)).rejects.toThrow(
    /There is no file/,
  );
  expect(await whole()).toEqual(before);
  await truncate(`${file}.text`);
  await expect(
    backUp(homeAt(first.url), reach, `${file}.text`, { figures: false, secrets: false }),
  ).rejects.toThrow(/there already/);
});
