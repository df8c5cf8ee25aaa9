import { finished } from "node:stream/promises";
import pg from "pg";
import { from as copyFrom } from "pg-copy-streams";
import { HomeTrouble } from "../home/home-trouble";
import { MIGRATING } from "../home/migrating";
import { type MigrationFile, migrationFiles } from "../home/migration-files";
import { tableNow } from "./copied-table";
import { clearedFor } from "./emptied";
import type { BackedTable, Manifest } from "./manifest";
import { entriesOf, tableOf } from "./read-backup";
import { plainlyWritten, quoted, storedTables } from "./stored-tables";

/**
 * Loads a checked backup in one transaction: what was there goes (only where `replace` says so), the migrations that the
 * backup had are applied, every table is loaded and counted and hashed again. Whatever goes wrong leaves what was before.
 *
 * @param ownerUrl the role that owns the log, where that is another: only it takes the old one away; the rest is the application's
 * @throws HomeTrouble
 */
export async function loadBackup(
  url: string,
  file: string,
  manifest: Manifest,
  replace: boolean,
  ownerUrl = url,
): Promise<void> {
  const ours = await migrationsOf(manifest);
  const client = new pg.Client({ connectionString: ownerUrl });
  client.on("error", () => undefined);
  await client.connect();
  try {
    await client.query("begin");
    await client.query(plainlyWritten);
    await client.query("select pg_advisory_xact_lock($1)", [MIGRATING]);
    const revision = await revisionOf(client);
    await clearedFor(client, replace);
    if (ownerUrl !== url)
      await client.query(
        `set local role ${client.escapeIdentifier(decodeURIComponent(new URL(url).username))}`,
      );
    await client.query(history);
    for (const { name, sql, checksum } of ours) {
      await client.query(sql);
      await client.query(
        `insert into _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
         values (gen_random_uuid()::text, $1, now(), $2, 1)`,
        [checksum, name],
      );
    }
    await loadTables(client, file, manifest);
    for (const { name, value } of manifest.sequences)
      await client.query("select setval($1::regclass, $2::bigint)", [quoted([name]), value]);
    await verify(client, manifest);
    if (revision !== null) await riseBeyond(client, revision);
    await client.query("commit");
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** The revision of the records that are replaced; null where there are none. */
async function revisionOf(client: pg.ClientBase): Promise<string | null> {
  const there = await client.query("select to_regclass('settings') as settings");
  if (there.rows[0].settings === null) return null;
  const { rows } = await client.query<{ value: string }>(
    "select value from settings where key = 'revision of the records'",
  );
  return rows[0]?.value ?? null;
}

/** What a server has kept of the records that were here before must not pass for what these come to. */
async function riseBeyond(client: pg.ClientBase, revision: string): Promise<void> {
  await client.query(
    `insert into settings (key, value) values ('revision of the records', ($1::bigint + 1)::text)
     on conflict (key) do update set value = (greatest(settings.value::bigint, $1::bigint) + 1)::text`,
    [revision],
  );
}

/** As Prisma makes it. */
const history = `create table _prisma_migrations (id varchar(36) primary key not null, checksum varchar(64) not null, finished_at timestamptz,
  migration_name varchar(255) not null, logs text, rolled_back_at timestamptz, started_at timestamptz not null default now(),
  applied_steps_count integer not null default 0)`;

/** The project's own files of the backup's migrations. */
async function migrationsOf(manifest: Manifest): Promise<MigrationFile[]> {
  const files = await migrationFiles();
  return manifest.migrations.map(({ name, checksum }, place) => {
    const file = files[place];
    if (file?.name !== name || file.checksum !== checksum)
      throw new HomeTrouble(
        `The backup was made by another version of this software (${manifest.software}; its migration ${name} is not here): restore it with that version or a later one.`,
      );
    return file;
  });
}

/** Copies every table in as the archive brings it: parents come before what refers to them. */
async function loadTables(client: pg.ClientBase, file: string, manifest: Manifest): Promise<void> {
  const tables = new Map(manifest.tables.map((table) => [table.name, table]));
  let into: ReturnType<typeof intoTable> | undefined;
  let name: string | undefined;
  for await (const entry of entriesOf(file)) {
    const next = tableOf(entry);
    if (next !== name) {
      await into?.end();
      const table = next === undefined ? undefined : tables.get(next);
      if (table) await withoutTriggers(client, table.name, true);
      into = table && intoTable(client, table);
      name = next;
    }
    await into?.write(entry.content);
  }
  await into?.end();
  for (const table of tables.keys()) await withoutTriggers(client, table, false);
}

/** Rows come back as they were: a trigger that makes a line's number and hash would make others. */
async function withoutTriggers(client: pg.ClientBase, table: string, off: boolean): Promise<void> {
  await client.query(`alter table ${quoted([table])} ${off ? "disable" : "enable"} trigger user`);
}

function intoTable(client: pg.ClientBase, table: BackedTable) {
  const stream = client.query(
    copyFrom(`copy ${quoted([table.name])} (${quoted(table.columns)}) from stdin`),
  );
  const over = finished(stream);
  over.catch(() => undefined);
  return {
    async write(content: Buffer): Promise<void> {
      if (stream.write(content)) return;
      await Promise.race([new Promise((resolve) => stream.once("drain", resolve)), over]);
    },
    async end(): Promise<void> {
      stream.end();
      await over;
    },
  };
}

/** @throws HomeTrouble where a table is not what the manifest says */
async function verify(client: pg.ClientBase, manifest: Manifest): Promise<void> {
  const told = new Map(manifest.tables.map((table) => [table.name, table]));
  const stored = await storedTables(client);
  for (const table of stored) {
    const now = await tableNow(client, table);
    const then = told.get(table.name);
    if (now.sha256 !== then?.sha256 || now.rows !== then.rows)
      throw new HomeTrouble(
        `The table ${table.name} did not come back as it was (${now.rows} rows of ${then?.rows ?? 0}): nothing was restored.`,
      );
  }
  if (stored.length !== told.size)
    throw new HomeTrouble("The backup has tables that its migrations do not make.");
}
