import { createHash } from "node:crypto";
import pg from "pg";
import { inject } from "vitest";
import { migrate } from "@/lib/store/home/migrate";
import { migrationFiles } from "@/lib/store/home/migration-files";
import { raiseWall } from "@/lib/store/home/raise-wall";
import { execute, type ScratchDatabase, scratchDatabase } from "@/lib/store/home/scratch-database";
import { wallSql } from "@/lib/store/wall/wall-sql";

/**
 * An empty, migrated database for one test file, the wall raised in it (tests ask as the owner, unless they say otherwise); `drop` it in afterAll. Reads nothing from the environment
 * and sets nothing in it: code that asks DATABASE_URL wants `process.env.DATABASE_URL = url` first.
 */
export async function freshDatabase(): Promise<ScratchDatabase> {
  const server = inject("databaseUrl");
  return scratchDatabase(server, await migratedTemplate(server));
}

/** The template is migrated once a run, by whichever test file is first. */
async function migratedTemplate(server: string): Promise<string> {
  const migrations = (await migrationFiles()).map((file) => file.name + file.checksum);
  const history = [...migrations, wallSql("owner", "viewers").digest].join();
  const name = `template_${createHash("sha256").update(history).digest("hex").slice(0, 16)}`;
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    await client.query("select pg_advisory_lock(20261102)");
    const found = await client.query("select 1 from pg_database where datname = $1", [name]);
    if (found.rowCount === 0) {
      const draft = await scratchDatabase(server);
      await migrate(draft.url);
      const viewersUrl = inject("viewersUrl");
      if (new URL(viewersUrl).username !== new URL(server).username)
        await raiseWall({ url: draft.url, keeperUrl: null, viewersUrl });
      await execute(server, `alter database ${draft.name} rename to ${name}`);
    }
    return name;
  } finally {
    await client.end();
  }
}
