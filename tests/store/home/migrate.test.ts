import { fork } from "node:child_process";
import { once } from "node:events";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { migrate } from "@/lib/store/home/migrate";
import { projectFolder } from "@/lib/store/home/project-folder";
import { driftOf } from "@/lib/store/home/schema-drift";
import { type ScratchDatabase, scratchDatabase } from "@/lib/store/home/scratch-database";
import { temporaryFolder } from "./temporary-home";

// Expected values are the project's own rule: each migration is there whole or not at all, and is done once.

let place: Awaited<ReturnType<typeof temporaryFolder>>;
let database: ScratchDatabase;
beforeAll(async () => {
  place = await temporaryFolder();
  database = await scratchDatabase(inject("databaseUrl"));
});
afterAll(async () => {
  await database.drop();
  await place.remove();
});

test("schema and migrations agree", async () => {
  expect(await driftOf(inject("databaseUrl"))).toBeNull();
});

test("a schema beyond its migrations is told as SQL", async () => {
  const schema = join(place.folder, "schema.prisma");
  await writeFile(
    schema,
    `datasource db {\n provider = "postgresql"\n}\nmodel Chair {\n  code String @id\n}\n`,
  );
  const drift = await driftOf(inject("databaseUrl"), { schema, migrations: place.folder });
  expect(drift).toContain('CREATE TABLE "Chair"');
});

test("migrations are applied once, and one cut short is tried again", async () => {
  await addMigration("20260101000000_first", "create table first (a int);");
  expect(await migrate(database.url, place.folder)).toEqual(["20260101000000_first"]);
  expect(await migrate(database.url, place.folder)).toEqual([]);

  await addMigration("20260102000000_second", "create table second (a int); select 1 / 0;");
  await expect(migrate(database.url, place.folder)).rejects.toThrow(
    /20260102000000_second: .*division by zero/,
  );
  await addMigration("20260102000000_second", "create table second (a int);");
  const both = await Promise.all([
    migrate(database.url, place.folder),
    migrate(database.url, place.folder),
  ]);
  expect(both.flat()).toEqual(["20260102000000_second"]);
});

test("a migration with which PostgreSQL goes on though its process was killed is waited for, and done", async () => {
  await addMigration("20260103000000_third", "select pg_sleep(1.5); create table third (a int);");
  const child = fork(join(projectFolder, "tests/store/home/migrate-once.ts"), {
    execArgv: ["--import", "tsx"],
    env: {
      ...process.env,
      TSX_TSCONFIG_PATH: join(projectFolder, "lib/command/tsconfig.json"),
      MIGRATE: JSON.stringify([database.url, place.folder]),
    },
  });
  const ended = once(child, "exit");
  const client = new pg.Client({ connectionString: database.url });
  await client.connect();
  const running =
    "select 1 from pg_stat_activity where query like '%pg_sleep(1.5); create%' and pid <> pg_backend_pid()";
  while ((await client.query(running)).rowCount === 0) await sleep(20);
  child.kill("SIGKILL");
  expect(await ended).toEqual([null, "SIGKILL"]);
  expect((await client.query("select to_regclass('third') as third")).rows[0].third).toBeNull();
  expect(await migrate(database.url, place.folder)).toEqual([]);
  expect((await client.query("select to_regclass('third') as third")).rows[0].third).toBe("third");
  await client.end();
}, 30_000);

test("a database from a later version is refused", async () => {
  const client = new pg.Client({ connectionString: database.url });
  await client.connect();
  await client.query(
    `insert into _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
     values ('x', 'x', '20990101000000_later', now(), 1)`,
  );
  await client.end();
  await expect(migrate(database.url, place.folder)).rejects.toThrow(
    /another version of this software \(its migration 20990101000000_later/,
  );
});

async function addMigration(name: string, sql: string): Promise<void> {
  await mkdir(join(place.folder, name), { recursive: true });
  await writeFile(join(place.folder, name, "migration.sql"), sql);
}
