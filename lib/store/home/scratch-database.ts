import { randomBytes } from "node:crypto";
import pg from "pg";

/** A database made for a moment on the server of `url`, and how to be rid of it. */
export interface ScratchDatabase {
  name: string;
  url: string;
  drop(): Promise<void>;
}

/**
 * Makes an empty database beside that of `url`; its role needs the right to make databases.
 * @param template name of a database to copy, to which nobody may be connected. Copied file by file: a copy by way of the log would give
 *   numbers of sequences a second time after a crash (PostgreSQL logs them ahead, and such a copy takes over how far ahead).
 */
export async function scratchDatabase(url: string, template?: string): Promise<ScratchDatabase> {
  const name = `scratch_${randomBytes(8).toString("hex")}`;
  await execute(
    url,
    `create database ${name}${template ? ` template ${template} strategy file_copy` : ""}`,
  );
  return {
    name,
    url: urlOfDatabase(url, name),
    drop: () => dropDatabase(url, name),
  };
}

/**
 * Ends whoever is connected and drops the database. Where PostgreSQL is just vacuuming it, an owner who is no superuser may
 * not end that process (42501); a plain drop asks it to stop and waits, so one follows the other until it is gone.
 */
async function dropDatabase(url: string, name: string): Promise<void> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await execute(
        url,
        `drop database if exists ${name} ${attempt % 2 ? "with (force)" : ""}`,
      );
    } catch (error) {
      if (attempt === 6 || !isInUse(error)) throw error;
    }
  }
}

/** "insufficient_privilege" of ending another's process, or "object_in_use". */
const isInUse = (error: unknown) =>
  error instanceof pg.DatabaseError && ["42501", "55006"].includes(error.code ?? "");

/** The same address with another database. */
function urlOfDatabase(url: string, name: string): string {
  const address = new URL(url);
  address.pathname = `/${name}`;
  return address.href;
}

/** Runs one statement on a connection of its own. */
export async function execute(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}
