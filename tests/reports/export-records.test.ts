import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { tableNames } from "@/lib/records/tables";
import { exportRecords, FolderInUse } from "@/lib/reports/export-records";
import { importRecords } from "@/lib/reports/import-records";
import { prisma } from "@/lib/store/database";
import { bringIn, canal, delivery, snapshot, use, visit } from "../store/bring-in";
import { anotherEmptyDatabase, eachOnEmptyDatabase } from "../store/empty-database";

// What is expected is the state before the move, the project's own; the rest is worked by hand.

eachOnEmptyDatabase();

const quarter = join(import.meta.dirname, "../data/quarter");
const { records } = holderReach();
let folder = "";
let unpacked = "";
beforeEach(async () => {
  unpacked = await mkdtemp(join(tmpdir(), "canal-audit-quarter-"));
  folder = await mkdtemp(join(tmpdir(), "canal-audit-way-out-"));
});
afterEach(async () => {
  for (const one of [folder, unpacked]) await rm(one, { recursive: true, force: true });
});

/** Takes everything to another database by its exported files. */
async function moved(out: string): Promise<void> {
  const written = await exportRecords(records, out);
  await anotherEmptyDatabase();
  for (const { folder: name, zone } of written) {
    const sources = tableNames.map((table) => ({
      path: join(out, name, `${table}.csv`),
      name: `${table}.csv`,
    }));
    await importRecords(records, sources, { zone, key: Buffer.alloc(32, 9) });
  }
}

/** Patients are hashed anew, so which rows share one is compared, and not the hash. */
async function state() {
  const found = await snapshot();
  const numbers = new Map<unknown, number>();
  const numbered = (patient: unknown) => {
    if (!numbers.has(patient)) numbers.set(patient, numbers.size);
    return numbers.get(patient);
  };
  return Object.fromEntries(
    Object.entries(found).map(([table, rows]) => [
      table,
      rows.map((row) =>
        typeof row === "object" && row !== null && "patient" in row
          ? { ...row, patient: numbered(row.patient) }
          : row,
      ),
    ]),
  );
}

test("a quarter of records with what is wrong in them is the same after it was moved", async () => {
  const sources = [];
  for (const packed of (await readdir(quarter)).filter((one) => one.endsWith(".csv.gz"))) {
    const name = packed.replace(/\.gz$/, "");
    const path = join(unpacked, name);
    await writeFile(path, gunzipSync(await readFile(join(quarter, packed))));
    sources.push({ path, name });
  }
  await importRecords(records, sources, { zone: "Europe/London", key: Buffer.alloc(32, 7) });
  const before = await state();
  expect(before.held?.length).toBeGreaterThan(0);
  await moved(folder);
  const after = await state();
  for (const table of Object.keys(before)) expect(after[table], table).toEqual(before[table]);
}, 60_000);

test("held rows are held again, exceptions entered on a page become rows, rows let go stay behind", async () => {
  await bringIn({
    sessions: [visit],
    canals: [canal],
    irrigation: [delivery, { ...delivery, volume_ml: 9 }, { ...delivery, session_id: "V-9" }],
    instruments: [use],
  });
  await prisma().enteredException.create({
    data: {
      ...{ practice: "OAK", sessionId: "V-1", canal: "", criterion: "isolation" },
      ...{ reason: "not-possible", note: "Never leaves.", userId: "u", by: "A. Clinician" },
    },
  });
  const before = await state();
  await moved(folder);
  expect(await state()).toEqual(before);
  expect(await prisma().exceptionRow.findMany()).toMatchObject([
    { criterion: "isolation", canal: "", reason: "not-possible" },
  ]);
  const text = await readFile(join(folder, "Europe-London", "exceptions.csv"), "utf8");
  expect(text).not.toContain("Never leaves.");
});

test("a folder with something in it is left as it is", async () => {
  await writeFile(join(folder, "mine.txt"), "mine");
  await expect(exportRecords(records, folder)).rejects.toThrow(FolderInUse);
});
