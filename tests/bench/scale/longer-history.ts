import { existsSync } from "node:fs";
import { cp, writeFile } from "node:fs/promises";
import { join } from "node:path";
import pg from "pg";
import { withHome } from "@/lib/reports/with-home";

/** Columns that move back with the years, and those that name a row of the years before. */
const moved: Readonly<Record<string, readonly string[]>> = {
  sessions: ["started_at", "ended_at", "local_day"],
  canals: [],
  irrigation: ["started_at"],
  instruments: [],
  followups: ["day"],
  steps: ["at"],
  exceptions: ["entered_at"],
  incidents: ["found_at"],
  upkeep: ["day", "at"],
  canal_facts: ["local_day"],
  visit_facts: ["local_day"],
  month_units: ["month"],
};

/**
 * A copy of a home with five years of records and the same years three times before them: twenty years of the same quarters. The
 * rows are copied in the database, as four million canals would take an import of half an hour; a leap day joins the day before.
 */
export async function longerHistory(home: string, folder: string): Promise<string> {
  const longer = join(folder, "home");
  if (existsSync(join(folder, "made"))) return longer;
  await cp(home, longer, { recursive: true });
  process.env.CANAL_AUDIT_HOME = longer;
  await withHome(async ({ url, keeperUrl }) => {
    const address = new URL(keeperUrl ?? url);
    address.pathname = new URL(url).pathname;
    const client = new pg.Client({ connectionString: address.href });
    await client.connect();
    try {
      await client.query("set session_replication_role = replica");
      for (const table of Object.keys(moved)) {
        console.error(`twenty years of ${table}`);
        await client.query(await movedBack(client, table));
        await client.query(`vacuum analyze "${table}"`);
      }
    } finally {
      await client.end();
    }
  });
  await writeFile(join(folder, "made"), "");
  return longer;
}

async function movedBack(client: pg.Client, table: string): Promise<string> {
  const { rows } = await client.query<{ name: string; type: string }>(
    `select attname as name, format_type(atttypid, atttypmod) as type from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped`,
    [table],
  );
  const values = rows.map(({ name, type }) => {
    if (moved[table]?.includes(name)) return `("${name}" - make_interval(years => 5 * n))::${type}`;
    if (name === "visit_id" || name === "id") return `"${name}" + n * 100000000::bigint`;
    if (name === "session_id" || name === "case_id") return `"${name}" || '/' || n`;
    return `"${name}"`;
  });
  const names = rows.map(({ name }) => `"${name}"`).join(", ");
  return `insert into "${table}" (${names}) select ${values.join(", ")} from "${table}", generate_series(1, 3) n on conflict do nothing`;
}
