import { createHmac } from "node:crypto";
import { copyFile, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach, leadReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { patientPseudonym } from "@/lib/reports/patient-pseudonym";
import { rotateKey } from "@/lib/reports/rotate-key";
import { recordVersions } from "@/lib/store/audits/record-versions";
import { pool } from "@/lib/store/database";
import {
  endRotation,
  keyFingerprint,
  makePatientKey,
  patientKey,
} from "@/lib/store/home/patient-key";
import { eachOnEmptyDatabase } from "../store/empty-database";

// Expected values are worked by hand: HMAC-SHA-256 (RFC 2104) over practice, a zero byte and the reference in Unicode's NFKC, cut to 32
// digits, once more by each further key. The groups before and after are compared with each other.

eachOnEmptyDatabase();

const { records } = holderReach();
let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-rotate-"));
  await makePatientKey(folder);
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const head =
  "session_id,practice,chair,clinician,patient,case_id,started_at,ended_at,tooth,tooth_notation,treatment,outcome\n";
const row = (
  id: string,
  practice: string,
  patient: string,
  more: { case?: string; tooth?: string } = {},
) =>
  `${id},${practice},1,C01,${patient},${more.case ?? ""},2026-05-0${id.length}T08:10:00Z,2026-05-0${id.length}T09:00:00Z,${more.tooth ?? "26"},fdi,primary,completed\n`;
const files = {
  "sessions.csv":
    head +
    row("a", "OAK", "Smith-1234") +
    row("bb", "OAK", " Smith-1234") +
    row("ccc", "OAK", "Jones-77", { case: "endo Jones-77 upper" }) +
    row("dddd", "ELM", "Smith-1234") +
    // Held: no such tooth; and a row that contradicts another.
    row("eeeee", "OAK", "Smith-1234", { tooth: "99" }) +
    row("a", "OAK", "Jones-77"),
};

test("the hash is over practice and the reference without outer space, in NFKC", () => {
  const key = Buffer.alloc(32, 7);
  const by = (bytes: Buffer, text: string) =>
    createHmac("sha256", bytes).update(text).digest("hex").slice(0, 32);
  const once = by(key, "OAK\0Ångström1");
  for (const written of ["Ångström1", "  Ångström1 ", "A\u030Angstro\u0308m1", "Ångström１"])
    expect(patientPseudonym(key, "OAK", written)).toBe(once);
  expect(patientPseudonym(key, "ELM", "Ångström1")).not.toBe(once);
  const second = Buffer.alloc(32, 8);
  const ring = Buffer.concat([key, second]);
  expect(patientPseudonym(ring, "OAK", "Ångström1")).toBe(by(second, once));
  expect(keyFingerprint(ring)).not.toBe(keyFingerprint(key));
});

test("after a rotation the same visits meet, the same files repeat and the same rows are held, and no old hash is left", async () => {
  await bring();
  const before = await groups();
  const old = await pseudonyms();
  const versions = await recordVersions(holderReach().figures, {
    name: "2026-Q2",
    from: "2026-04-01",
    until: "2026-07-01",
  });
  const heldBefore = await held();
  expect(before).toEqual([["ELM/dddd"], ["OAK/a", "OAK/bb"], ["OAK/ccc"]]);
  expect(heldBefore).toBe(2);

  const key = await patientKey(folder);
  const done = await rotateKey(records, { key, folder });
  expect(done.patients).toBe(old.length);
  expect(await groups()).toEqual(before);
  expect(
    await recordVersions(holderReach().figures, {
      name: "2026-Q2",
      from: "2026-04-01",
      until: "2026-07-01",
    }),
  ).toEqual(versions);
  const now = await pseudonyms();
  expect(now.filter((one) => old.includes(one))).toEqual([]);
  for (const one of old) expect(await placesOf(one)).toEqual([]);

  // Brought again under the new key: every row is known, held ones too.
  const counts = await bring();
  expect(counts).toMatchObject({ accepted: 0, repeated: 4, held: 2 });
  expect(await held()).toBe(heldBefore);
  expect(await groups()).toEqual(before);
  await rotateKey(records, { key: await patientKey(folder), folder });
  expect(await groups()).toEqual(before);
  expect((await patientKey(folder)).length).toBe(96);
  const { rows } = await pool().query("select case_id from sessions where session_id = 'ccc'");
  const third = patientPseudonym(await patientKey(folder), "OAK", "Jones-77");
  expect(rows).toEqual([{ case_id: `endo ${third} upper` }]);
});

test("the database keeps a fingerprint of the key, and another key is refused", async () => {
  await bring();
  const { rows } = await pool().query("select value from settings where key like 'patient key%'");
  expect(rows).toEqual([{ value: keyFingerprint(await patientKey(folder)) }]);
  await writeFile(join(folder, "patient-key"), `${"ab".repeat(32)}\n`, { mode: 0o600 });
  await expect(bring()).rejects.toThrow("not the one these records were read with");
  const wrong = { key: await patientKey(folder), folder };
  await expect(rotateKey(records, wrong)).rejects.toThrow("put the right key back");
  expect(await readdir(folder)).not.toContain("patient-key.next");
});

test("a rotation cut short on either side of its transaction is ended by what the database says", async () => {
  await bring();
  const first = await patientKey(folder);
  const kept = join(folder, "kept");
  await copyFile(join(folder, "patient-key"), kept);
  await rotateKey(records, { key: first, folder });
  // As if it had died before the key took its place.
  await copyFile(join(folder, "patient-key"), join(folder, "patient-key.next"));
  await copyFile(kept, join(folder, "patient-key"));
  const { rows } = await pool().query("select value from settings where key like 'patient key%'");
  expect(await endRotation(folder, rows[0].value)).toBe(true);
  expect((await patientKey(folder)).length).toBe(64);
  // And before the records changed.
  await writeFile(join(folder, "patient-key.next"), `${"cd".repeat(32)}\n`);
  expect(await endRotation(folder, rows[0].value)).toBe(false);
  expect((await readFile(join(folder, "patient-key"), "utf8")).trim().split("\n").length).toBe(2);
});

test("only whoever may see everything rotates the key", async () => {
  const { recordsReach } = await import("@/lib/access/reach");
  const grants = [{ role: "record-keeper", practice: "OAK", clinicianKey: null }] as const;
  const reach = recordsReach({ userId: "k", name: "K", email: "k@tests.example", grants });
  await expect(rotateKey(reach, { key: await patientKey(folder), folder })).rejects.toThrow(
    "the whole group",
  );
  expect(() => leadReach({ userId: "k", name: "K", email: "", grants })).toThrow();
});

async function bring() {
  const sources = await Promise.all(
    Object.entries(files).map(async ([name, text]) => {
      const path = join(folder, name);
      await writeFile(path, text);
      return { path, name };
    }),
  );
  const result = await importRecords(records, sources, {
    zone: "UTC",
    key: await patientKey(folder),
  });
  return result.files[0];
}

/** Visits that share a patient, as practice/visit. */
async function groups(): Promise<string[][]> {
  const { rows } = await pool().query<{ of: string[] }>(
    `select array_agg(practice || '/' || session_id order by practice, session_id) as of from sessions group by patient order by 1`,
  );
  return rows.map(({ of }) => of);
}

async function pseudonyms(): Promise<string[]> {
  const { rows } = await pool().query<{ patient: string }>("select distinct patient from sessions");
  return rows.map(({ patient }) => patient);
}

async function held(): Promise<number> {
  return (await pool().query("select from held")).rowCount ?? 0;
}

async function placesOf(text: string): Promise<string[]> {
  const { rows } = await pool().query<{ name: string }>(
    "select table_name as name from information_schema.tables where table_schema = 'public'",
  );
  const found: string[] = [];
  for (const { name } of rows) {
    const sql = `select from "${name}" t where position($1 in to_jsonb(t)::text) > 0 limit 1`;
    if ((await pool().query(sql, [text])).rowCount) found.push(name);
  }
  return found;
}
