import { cp, mkdir, mkdtemp, rm } from "node:fs/promises";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import pg from "pg";
import { from as copyFrom, to as copyTo } from "pg-copy-streams";
import { quoted, storedTables } from "@/lib/store/backup/stored-tables";
import { disconnect } from "@/lib/store/database";
import { migrate } from "@/lib/store/home/migrate";
import { migrationFiles, migrationsFolder } from "@/lib/store/home/migration-files";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import type { Ground, Outcome } from "./ground";
import { asked } from "./own-server";
import { soundness } from "./sound";
import { recordSections } from "./state";

/** What the first release knew of: it mended nothing, so that its held rows are those that are held still. */
export const firstSections = recordSections.filter((section) => section !== "held");

/** A database as the first release left it: its tables and the base's rows in them, as far as there were columns for them. */
export async function firstRelease({ server, base }: Ground): Promise<ScratchDatabase> {
  const database = await server.database();
  const folder = await mkdtemp(join(server.folder, "migrations-"));
  const [first] = await migrationFiles();
  if (!first) throw new Error("there are migrations");
  await mkdir(join(folder, first.name), { recursive: true });
  for (const name of [first.name, "migration_lock.toml"])
    await cp(join(migrationsFolder, name), join(folder, name), { recursive: true });
  await migrate(database.url, folder);
  await rm(folder, { recursive: true });
  await carryOver(base.database.url, database.url);
  return database;
}

async function carryOver(from: string, to: string): Promise<void> {
  const [source, target] = [from, to].map((url) => new pg.Client({ connectionString: url }));
  if (!source || !target) return;
  await Promise.all([source.connect(), target.connect()]);
  try {
    const now = new Map((await storedTables(source)).map((table) => [table.name, table.columns]));
    for (const { name, columns } of await storedTables(target)) {
      const both = quoted(columns.filter((column) => now.get(name)?.includes(column)));
      if (both === "") continue;
      const known = name === "held" ? "where state in ('held', 'let-go')" : "";
      await pipeline(
        source.query(copyTo(`copy (select ${both} from ${quoted([name])} ${known}) to stdout`)),
        target.query(copyFrom(`copy ${quoted([name])} (${both}) from stdin`)),
      );
    }
    const { rows } = await source.query<{ name: string; value: string }>(
      "select sequencename as name, last_value::text as value from pg_sequences where last_value is not null",
    );
    for (const { name, value } of rows)
      await target.query("select setval(to_regclass($1), $2::bigint)", [quoted([name]), value]);
  } finally {
    await Promise.all([source.end(), target.end()]);
  }
}

/** The first release's database brought up to date: every row and every figure is there. */
export async function upgraded(on: Ground): Promise<Outcome> {
  const database = await firstRelease(on);
  const applied = await migrate(database.url);
  const { troubles } = await soundness(database.url, [on.base.before], { sections: firstSections });
  const schema = await schemaOf(database.url);
  const more = schema === (await schemaOf(on.base.database.url)) ? [] : ["its schema is another"];
  await disconnect();
  await database.drop();
  const came = [`with ${applied.length} migrations`];
  return {
    ...{ what: "upgrade from the first release's database", points: 1, came },
    troubles: [...troubles, ...more],
  };
}

/** Columns, constraints, indexes and triggers of a database, as one text. */
export async function schemaOf(url: string): Promise<string> {
  const rows = await asked(
    url,
    `select string_agg(line, E'\\n' order by line) as schema from (
       select table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable || ' ' || coalesce(column_default, '') as line
       from information_schema.columns where table_schema = 'public'
       union all select conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) from pg_constraint where connamespace = 'public'::regnamespace
       union all select indexdef from pg_indexes where schemaname = 'public'
       union all select pg_get_triggerdef(oid) from pg_trigger where not tgisinternal) t`,
  );
  return String(rows[0]?.schema);
}
