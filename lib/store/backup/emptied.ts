import { setTimeout as sleep } from "node:timers/promises";
import type pg from "pg";
import { HomeTrouble } from "../home/home-trouble";
import { migrationFiles } from "../home/migration-files";
import { quoted } from "./stored-tables";

/**
 * Takes out what the database holds, in the transaction that fills it anew.
 *
 * @throws HomeTrouble where it holds rows and `replace` is not said, somebody works on it, or its tables are not ours
 */
export async function clearedFor(client: pg.ClientBase, replace: boolean): Promise<void> {
  const { rows: tables } = await client.query<{ name: string }>(
    "select relname as name from pg_class where relnamespace = current_schema()::regnamespace and relkind in ('r', 'p', 'v', 'm', 'f') order by 1",
  );
  const names = tables.map(({ name }) => name);
  await refuseOthers(names);
  await refuseCompany(client);
  if (!replace) await refuseRows(client, names);
  // Nobody reads or writes from here on; whoever had begun ends first.
  for (const name of names) await client.query(`drop table ${quoted([name])} cascade`);
  for (const name of await namesMade("function"))
    await client.query(`drop function if exists ${quoted([name])} cascade`);
}

/** Only tables that the migrations make are ever dropped. */
async function refuseOthers(names: readonly string[]): Promise<void> {
  const made = new Set(["_prisma_migrations", ...(await namesMade("table"))]);
  const other = names.find((name) => !made.has(name));
  if (other)
    throw new HomeTrouble(
      `The database holds ${other}, which is not of this version of this software: restore into a database of its own.`,
    );
}

/** Whoever is connected would go on with what it has read before; whoever is just leaving, as after a crash, is waited for. */
async function refuseCompany(client: pg.ClientBase): Promise<void> {
  for (let looks = 1; (await othersThere(client)) > 0; looks += 1) {
    if (looks === 10)
      throw new HomeTrouble(
        "Others work on this database: stop the server and other commands first.",
      );
    await sleep(500);
  }
}

async function othersThere(client: pg.ClientBase): Promise<number> {
  // Who is there is looked up once in a transaction, if not told to look again.
  await client.query("select pg_stat_clear_snapshot()");
  const { rows } = await client.query<{ others: number }>(
    `select count(*)::int as others from pg_stat_activity
     where datname = current_database() and backend_type = 'client backend' and pid <> pg_backend_pid()`,
  );
  return rows[0]?.others ?? 0;
}

async function refuseRows(client: pg.ClientBase, names: readonly string[]): Promise<void> {
  for (const name of names) {
    if (name === "_prisma_migrations") continue;
    const { rows } = await client.query(`select exists (select from ${quoted([name])}) as any`);
    if (rows[0].any)
      throw new HomeTrouble(
        `The database is not empty (${name} has rows): restore into an empty home, or say --replace to give up what is there.`,
      );
  }
}

/** What the project's migrations make of a kind, by name. */
async function namesMade(kind: "table" | "function"): Promise<string[]> {
  const making = new RegExp(`^\\s*create (?:or replace )?${kind} "?(\\w+)"?`, "gim");
  return (await migrationFiles()).flatMap(({ sql }) =>
    [...sql.matchAll(making)].map(([, name = ""]) => name),
  );
}
