import { readFile } from "node:fs/promises";
import { dirname } from "node:path";
import { migrate } from "./migrate";
import { migrationsFolder, schemaFile } from "./migration-files";
import { withSchemaEngine } from "./schema-engine";
import { scratchDatabase } from "./scratch-database";

/**
 * The SQL by which the schema goes beyond the migrations, or null where the two agree: the migrations are
 * applied to a scratch database, and that is compared with the schema.
 * @param url of a role that may make databases; its own database is not touched.
 * @param places other folders than the project's own; for trying this out.
 */
export async function driftOf(
  url: string,
  places: { schema?: string; migrations?: string } = {},
): Promise<string | null> {
  const path = places.schema ?? schemaFile;
  const files = [{ path, content: await readFile(path, "utf8") }];
  const scratch = await scratchDatabase(url);
  try {
    await migrate(scratch.url, places.migrations ?? migrationsFolder);
    const found = await withSchemaEngine(scratch.url, (engine) =>
      engine.diff({
        from: { tag: "schemaDatasource", files, configDir: dirname(path) },
        to: { tag: "schemaDatamodel", files },
        script: true,
        exitCode: true,
        filters: { externalTables: [], externalEnums: [] },
      }),
    );
    // Exit code 2 says that the difference is not empty, as with `prisma migrate diff --exit-code`.
    return found.exitCode === 2 ? (found.stdout ?? "") : null;
  } finally {
    await scratch.drop();
  }
}
