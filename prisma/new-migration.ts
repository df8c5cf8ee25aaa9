import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { migrationsFolder } from "@/lib/store/home/migration-files";
import { openHome } from "@/lib/store/home/open-home";
import { driftOf } from "@/lib/store/home/schema-drift";
import { execute } from "@/lib/store/home/scratch-database";

/**
 * For developers: writes the migration that brings the schema's latest changes, in Prisma's layout.
 *   npx tsx --tsconfig lib/command/tsconfig.json prisma/new-migration.ts add-visit-note
 * Works in a throwaway home. What the schema cannot say (policies, functions) is added to the file by hand.
 */
async function writeMigration(name: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-migration-"));
  process.env.CANAL_AUDIT_HOME = folder;
  delete process.env.DATABASE_URL;
  const home = await openHome();
  try {
    await execute(home.keeperUrl ?? home.url, "alter role canal_audit createdb");
    const sql = await driftOf(home.url);
    if (sql === null) return "Schema and migrations agree: nothing to write.";
    const stamp = new Date().toISOString().replaceAll(/\D/g, "").slice(0, 14);
    const place = join(migrationsFolder, `${stamp}_${name.replaceAll(/\W+/g, "_")}`);
    await mkdir(place, { recursive: true });
    await writeFile(join(place, "migration.sql"), sql);
    await writeFile(join(migrationsFolder, "migration_lock.toml"), 'provider = "postgresql"\n');
    return `Written: ${join(place, "migration.sql")}`;
  } finally {
    await home.close();
    await rm(folder, { recursive: true, force: true });
  }
}

const name = process.argv[2];
if (!name) throw new Error("Give the migration a name: prisma/new-migration.ts NAME");
console.log(await writeMigration(name));
