import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { cp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { afterEach, beforeEach, expect, test } from "vitest";
import { isAlive } from "@/lib/store/home/process-mark";
import { projectFolder } from "@/lib/store/home/project-folder";
import { openIn, temporaryFolder } from "./temporary-home";

// Every expected value here is computed by the test itself or is a mode or number of our own choosing.

let place: Awaited<ReturnType<typeof temporaryFolder>>;
beforeEach(async () => {
  place = await temporaryFolder();
});
afterEach(() => place.remove());

test("a home opens, holds what was written, and is down again when the last has left", async () => {
  const home = await openIn(place.folder);
  await ask(home.url, "create table kept as select 7 as seven");
  const beside = await openIn(place.folder);
  expect(beside.url).toBe(home.url);
  const pid = await serverPid(place.folder);
  await home.close();
  expect(await ask(beside.url, "select seven from kept")).toEqual([{ seven: 7 }]);
  expect(isAlive(pid)).toBe(true);
  await beside.close();
  expect(isAlive(pid)).toBe(false);

  const again = await openIn(place.folder);
  expect(await ask(again.url, "select seven from kept")).toEqual([{ seven: 7 }]);
  await again.close();
});

test("the application's role is no superuser, the text is UTF-8 and sorts by code point", async () => {
  const home = await openIn(place.folder);
  const [role] = await ask(
    home.url,
    "select rolsuper, rolcreatedb, rolcreaterole from pg_roles where rolname = current_user",
  );
  expect(role).toEqual({ rolsuper: false, rolcreatedb: false, rolcreaterole: false });
  expect(await ask(home.url, "show server_encoding")).toEqual([{ server_encoding: "UTF8" }]);
  // Unicode code points: Z is U+005A, a is U+0061, é is U+00E9 (The Unicode Standard, chart 0000 and 0080).
  const sorted = await ask(home.url, "select x from unnest(array['é','a','Z']) x order by x");
  expect(sorted.map((row) => row.x)).toEqual(["Z", "a", "é"]);
  await home.close();
});

test("two homes never meet, not even a home and its copy", async () => {
  const other = await temporaryFolder();
  const copy = await temporaryFolder();
  const one = await openIn(place.folder);
  const two = await openIn(other.folder);
  expect(new URL(one.url).port).not.toBe(new URL(two.url).port);
  expect(one.key.equals(two.key)).toBe(false);
  const wrongDoor = new URL(one.url);
  wrongDoor.port = new URL(two.url).port;
  await expect(ask(wrongDoor.href, "select 1")).rejects.toThrow(/password/);

  await ask(one.url, "create table kept as select 7 as seven");
  await ask(one.keeperUrl ?? "", "checkpoint");
  await cp(place.folder, copy.folder, { recursive: true });
  const third = await openIn(copy.folder);
  await ask(third.url, "drop table kept");
  expect(await ask(one.url, "select seven from kept")).toEqual([{ seven: 7 }]);
  for (const home of [one, two, third]) await home.close();
  await other.remove();
  await copy.remove();
});

test("a server outlives its killed owner and is joined, and one that was killed recovers", async () => {
  const owner = await openElsewhere(place.folder);
  const pid = await serverPid(place.folder);
  owner.kill("SIGKILL");
  await once(owner, "exit");
  expect(isAlive(pid)).toBe(true);

  const home = await openIn(place.folder);
  expect(await serverPid(place.folder)).toBe(pid);
  await ask(home.url, "create table kept as select 7 as seven");
  process.kill(pid, "SIGKILL");
  while (isAlive(pid)) await sleep(10);
  const after = await openIn(place.folder);
  expect(await ask(after.url, "select seven from kept")).toEqual([{ seven: 7 }]);
  const second = await serverPid(place.folder);
  await home.close();
  await after.close();
  expect(isAlive(second)).toBe(false);
});

test("a process number that somebody else has got by now does not stop the start", async () => {
  const home = await openIn(place.folder);
  const file = join(place.folder, "postgres", "postmaster.pid");
  const text = await readFile(file, "utf8");
  await home.close();
  await writeFile(file, text.replace(/^\d+/, String(process.pid)), { mode: 0o600 });
  const again = await openIn(place.folder);
  expect(await serverPid(place.folder)).not.toBe(process.pid);
  await again.close();
});

test("many at once share one server and one key", async () => {
  const homes = await Promise.all(Array.from({ length: 5 }, () => openIn(place.folder)));
  expect(new Set(homes.map((home) => home.url + home.key.toString("hex"))).size).toBe(1);
  await Promise.all(homes.map((home) => home.close()));
  await expect(stat(join(place.folder, "postgres", "postmaster.pid"))).rejects.toThrow();
});

test("a home that lost its key refuses to make another", async () => {
  await (await openIn(place.folder)).close();
  await rm(join(place.folder, "patient-key"));
  await expect(openIn(place.folder)).rejects.toThrow(/patient key .* is missing/);
});

async function ask(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  client.on("error", () => {});
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

async function serverPid(folder: string): Promise<number> {
  return Number.parseInt(await readFile(join(folder, "postgres", "postmaster.pid"), "utf8"), 10);
}

/** Another process that opens the home and stays. */
async function openElsewhere(folder: string): Promise<ChildProcess> {
  const script = `import("@/lib/store/home/open-home").then(({ openHome }) => openHome()).then(() => {
    console.log("open"); setInterval(() => {}, 1000); });`;
  const words = ["--import", "tsx", "--input-type=module", "-e", script.replace("@/", "./")];
  const { DATABASE_URL: _, ...env } = process.env;
  const child = spawn(process.execPath, words, {
    cwd: projectFolder,
    env: { ...env, CANAL_AUDIT_HOME: folder },
    stdio: ["ignore", "pipe", "inherit"],
  });
  await once(child.stdout, "data");
  return child;
}
