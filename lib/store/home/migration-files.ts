import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { MigrationList } from "@prisma/schema-engine-wasm/schema_engine_bg";
import { projectFolder } from "./project-folder";

/** One migration as the folder holds it; the checksum is what Prisma writes into `_prisma_migrations`. */
export interface MigrationFile {
  name: string;
  sql: string;
  checksum: string;
}

/** Where the project keeps its migrations and schema, in Prisma's own layout. */
export const migrationsFolder = join(projectFolder, "prisma", "migrations");
export const schemaFile = join(projectFolder, "prisma", "schema.prisma");

/** The migrations of the folder in the order of their names; none where there is no folder. */
export async function migrationFiles(folder = migrationsFolder): Promise<MigrationFile[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(
    names.sort().map(async (name) => {
      const sql = await readFile(join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    }),
  );
}

/** The same in the shape that the schema engine takes. */
export async function migrationList(folder = migrationsFolder): Promise<MigrationList> {
  const lockfile = await readFile(join(folder, "migration_lock.toml"), "utf8").catch(() => null);
  return {
    baseDir: folder,
    lockfile: { path: "migration_lock.toml", content: lockfile },
    shadowDbInitScript: "",
    migrationDirectories: (await migrationFiles(folder)).map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: "migration.sql", content: { tag: "ok", value: sql } },
    })),
  };
}
