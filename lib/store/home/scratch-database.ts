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
 * @param template name of a database to copy, to which nobody may be connected.
 */
export async function scratchDatabase(url: string, template?: string): Promise<ScratchDatabase> {
  const name = `scratch_${randomBytes(8).toString("hex")}`;
  await execute(url, `create database ${name}${template ? ` template ${template}` : ""}`);
  return {
    name,
    url: urlOfDatabase(url, name),
    drop: () => execute(url, `drop database if exists ${name} with (force)`),
  };
}

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
