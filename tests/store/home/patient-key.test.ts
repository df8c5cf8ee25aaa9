import { chmod, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { makePatientKey, patientKey } from "@/lib/store/home/patient-key";
import { temporaryFolder } from "./temporary-home";

// Expected values are the project's own rules.

// Expected values are of our own choosing: 32 bytes (the output length of SHA-256, FIPS 180-4) and mode 0600.

let place: Awaited<ReturnType<typeof temporaryFolder>>;
beforeEach(async () => {
  place = await temporaryFolder();
});
afterEach(async () => {
  delete process.env.CANAL_AUDIT_PATIENT_KEY;
  await place.remove();
});

test("the key is made once, and by one of many that want it at once", async () => {
  const keys = await Promise.all(Array.from({ length: 8 }, () => makePatientKey(place.folder)));
  expect(new Set(keys.map((key) => key.toString("hex"))).size).toBe(1);
  expect(keys[0]?.length).toBe(32);
  expect(await patientKey(place.folder)).toEqual(keys[0]);
});

test("only its owner may read it, also after somebody opened it to others", async () => {
  const file = join(place.folder, "patient-key");
  await makePatientKey(place.folder);
  expect((await stat(file)).mode & 0o777).toBe(0o600);
  await chmod(file, 0o644);
  await patientKey(place.folder);
  expect((await stat(file)).mode & 0o777).toBe(0o600);
});

test("the environment's key is used instead, in hexadecimal or base64, and none is made", async () => {
  const bytes = Buffer.alloc(32, 0xa7);
  for (const text of [
    bytes.toString("hex"),
    bytes.toString("base64"),
    bytes.toString("base64url"),
  ]) {
    process.env.CANAL_AUDIT_PATIENT_KEY = text;
    expect(await makePatientKey(place.folder)).toEqual(bytes);
  }
  await expect(readFile(join(place.folder, "patient-key"))).rejects.toThrow();
  process.env.CANAL_AUDIT_PATIENT_KEY = "secret";
  await expect(makePatientKey(place.folder)).rejects.toThrow(/not a key of 32 bytes/);
});

test("a damaged key is told, not replaced", async () => {
  await writeFile(join(place.folder, "patient-key"), "abc\n", { mode: 0o600 });
  await expect(makePatientKey(place.folder)).rejects.toThrow(/is damaged/);
});
