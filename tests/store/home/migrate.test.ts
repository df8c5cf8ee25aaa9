import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import pg from "pg";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { migrate } from "@/lib/store/home/migrate";
import { driftOf } from "@/lib/store/home/schema-drift";
import { type ScratchDatabase, scratchDatabase } from "@/lib/store/home/scratch-database";
import { temporaryFolder } from "./temporary-home";

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
