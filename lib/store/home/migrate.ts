import pg from "pg";
import { HomeTrouble } from "./home-trouble";
import { MIGRATING, SCRIPT_RUNS } from "./migrating";
import {
  type MigrationFile,
  migrationFiles,
  migrationList,
  migrationsFolder,
} from "./migration-files";

/**
 * Brings the database to the project's newest migration, as `prisma migrate deploy` does and with the
 * same records in `_prisma_migrations`. Used by start, command and tests; never by a page.
 * @param folder of migrations in Prisma's layout; the project's own unless told.
 * @returns names of the migrations applied now; empty where there was nothing to do.
 * @throws HomeTrouble where the database is ahead of the folder, or a migration failed.
 */
export async function migrate(url: string, folder = migrationsFolder): Promise<string[]> {
  const files = await migrationFiles(folder);
  const client = new pg.Client({ connectionString: url });
  // A server that goes makes the next question fail, which says so.
  client.on("error", () => undefined);
  await client.connect();
  try {
    if (await isCurrent(client, files)) return [];
    // One migrator at a time; ending the connection lets go of the lock, however this process ends.
    await client.query("select pg_advisory_lock($1)", [MIGRATING]);
    if (await isCurrent(client, files)) return [];
    await forgetCutShort(client);
    if (await isCurrent(client, files)) return [];
    await withoutPolicies(client);
    return await apply(url, folder);
  } finally {
    await client.end();
  }
}

/** Asked first, since loading the engine takes longer than the answer. */
async function isCurrent(client: pg.Client, files: MigrationFile[]): Promise<boolean> {
  if (!(await hasHistory(client))) return files.length === 0;
  const { rows } = await client.query<{ migration_name: string; checksum: string; done: boolean }>(
    `select migration_name, checksum, finished_at is not null as done
       from _prisma_migrations where rolled_back_at is null`,
  );
  const known = new Map(files.map((file) => [file.name, file.checksum]));
  const unknown = rows.find((row) => !known.has(row.migration_name));
  if (unknown) {
    throw new HomeTrouble(
      `The database was made by another version of this software (its migration ${unknown.migration_name} is not here): use that version, or another home.`,
    );
  }
  return (
    rows.length === files.length &&
    rows.every((row) => row.done && row.checksum === known.get(row.migration_name))
  );
}

/**
 * A migration is one transaction with the word that it is done, so one that never finished left nothing behind but its row. One that still
 * runs, though its process was killed, is waited for.
 */
async function forgetCutShort(client: pg.Client): Promise<void> {
  if (!(await hasHistory(client))) return;
  await client.query("select pg_advisory_lock($1)", [SCRIPT_RUNS]);
  await client.query("select pg_advisory_unlock($1)", [SCRIPT_RUNS]);
  await client.query(
    `update _prisma_migrations set rolled_back_at = now()
      where finished_at is null and rolled_back_at is null`,
  );
}

/** A column that a policy names cannot be changed. Until the wall is raised again (raise-wall) viewers are shown nothing. */
async function withoutPolicies(client: pg.Client): Promise<void> {
  await client.query(`do $$ declare one record; begin
    for one in select p.polname, p.polrelid::regclass as place from pg_policy p join pg_class c on c.oid = p.polrelid
      where c.relnamespace = current_schema()::regnamespace
    loop
      execute format('drop policy %I on %s', one.polname, one.place);
      execute format('alter table %s no force row level security', one.place);
    end loop; end $$`);
}

async function hasHistory(client: pg.Client): Promise<boolean> {
  const found = await client.query("select to_regclass('_prisma_migrations') as history");
  return found.rows[0].history !== null;
}

async function apply(url: string, folder: string): Promise<string[]> {
  const { withSchemaEngine } = await import("./schema-engine");
  const migrationsList = await migrationList(folder);
  const filters = { externalTables: [], externalEnums: [] };
  try {
    const done = await withSchemaEngine(url, (engine) =>
      engine.applyMigrations({ migrationsList, filters }),
    );
    return done.appliedMigrationNames;
  } catch (error) {
    throw new HomeTrouble(`A migration of the database failed (${sentence(error)}).`);
  }
}

/** The engine's errors go on for lines about where in its own source they arose. */
function sentence(error: unknown): string {
  const text = error instanceof Error ? error.message : JSON.stringify(error);
  const lines = text.split("\n").map((line) => line.trim());
  const from = lines.findIndex((line) => /^\d+: /.test(line));
  const name = /migration_name="([^"]+)"/.exec(text)?.[1];
  const told = (from < 0 ? lines : lines.slice(0, from)).filter((line) => line !== "").join(" ");
  return name ? `${name}: ${told}` : told;
}
