import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { pageEnvironment } from "@/lib/command/start/page-environment";
import { intakeContext } from "@/lib/reports/import-records";
import { disconnect } from "@/lib/store/database";
import { openHome } from "@/lib/store/home/open-home";
import { readyDatabase, refuseOtherKey } from "@/lib/store/home/ready-database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";

// Expected values are the project's own rules: processes on one database have one patient key and one secret of the sign-in, from the
// environment where they have no home in common.

const kept = { ...process.env };
const place = { host: "127.0.0.1", port: 3000, address: "http://127.0.0.1:3000" };
const one = "ab".repeat(32);
let database: ScratchDatabase;
const homes: string[] = [];

beforeEach(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterEach(async () => {
  await disconnect();
  await database.drop();
  for (const home of homes.splice(0)) await rm(home, { recursive: true, force: true });
  for (const name of ["CANAL_AUDIT_PATIENT_KEY", "CANAL_AUDIT_SIGN_IN_SECRET", "CANAL_AUDIT_HOME"])
    if (kept[name] === undefined) delete process.env[name];
    else process.env[name] = kept[name];
});

/** A process on a machine of its own: an empty home, and what the environment gives. */
async function opened() {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-shared-"));
  homes.push(folder);
  process.env.CANAL_AUDIT_HOME = folder;
  const home = await openHome();
  await readyDatabase(home);
  return home;
}

test("the key of the environment is everybody's, and is written to no home", async () => {
  process.env.CANAL_AUDIT_PATIENT_KEY = one;
  const [here, there] = [await opened(), await opened()];
  expect(here.key.toString("hex")).toBe(one);
  expect(there.key.equals(here.key)).toBe(true);
  for (const { folder } of [here, there])
    expect(await readdir(folder)).not.toContain("patient-key");
});

test("a process with another key than that of the records does not start, and brings nothing in", async () => {
  process.env.CANAL_AUDIT_PATIENT_KEY = one;
  const here = await opened();
  const { records } = holderReach();
  await refuseOtherKey(here);
  await intakeContext(records, { zone: "UTC", key: here.key });
  await refuseOtherKey(here);
  process.env.CANAL_AUDIT_PATIENT_KEY = "cd".repeat(32);
  const there = await opened();
  await expect(refuseOtherKey(there)).rejects.toThrow(/not the one these records were read with/);
  await expect(intakeContext(records, { zone: "UTC", key: there.key })).rejects.toThrow(
    /patient key/,
  );
});

test("the secret of the sign-in is the environment's where it is given, else the home's, and never one that can be guessed", async () => {
  process.env.CANAL_AUDIT_PATIENT_KEY = one;
  const [here, there] = [await opened(), await opened()];
  const secretOf = async (home: typeof here) =>
    (await pageEnvironment(home, place)).BETTER_AUTH_SECRET;
  expect(await secretOf(here)).toBe(await secretOf(here));
  expect(await secretOf(here)).not.toBe(await secretOf(there));
  process.env.CANAL_AUDIT_SIGN_IN_SECRET = "a secret of thirty-two characters";
  expect(await secretOf(here)).toBe("a secret of thirty-two characters");
  expect(await secretOf(there)).toBe("a secret of thirty-two characters");
  process.env.CANAL_AUDIT_SIGN_IN_SECRET = "short";
  await expect(pageEnvironment(here, place)).rejects.toThrow(/shorter than 32/);
});
