import type pg from "pg";
import type { Manifest } from "./manifest";

/** The migrations that the database has had, in their order; none where it never had one. */
export async function appliedMigrations(client: pg.ClientBase): Promise<Manifest["migrations"]> {
  const there = await client.query("select to_regclass('_prisma_migrations') as history");
  if (there.rows[0].history === null) return [];
  const { rows } = await client.query<{ name: string; checksum: string }>(
    `select migration_name as name, checksum from _prisma_migrations
     where finished_at is not null and rolled_back_at is null order by migration_name collate "C"`,
  );
  return rows;
}
